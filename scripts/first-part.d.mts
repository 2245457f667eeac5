import type { Plugin } from 'vite'

export declare function firstPart(name: string): Plugin
