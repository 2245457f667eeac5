import type { Plugin } from 'vite'

export declare function firstPart(name: string, next?: Readonly<Record<string, string>>): Plugin
