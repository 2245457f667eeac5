export declare function sourceStamp(): string
export declare function pageBuilt(say?: (words: string) => void): boolean
