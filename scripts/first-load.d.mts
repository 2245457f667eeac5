export declare function firstLoadScripts(folder: string): string[]
