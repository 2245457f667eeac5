export declare function firstLoadScripts(folder: string, later?: readonly string[]): string[]
