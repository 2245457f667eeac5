import type { Plugin } from 'vite'

export declare function leanLibraries(side: 'page' | 'thread'): Plugin
