import type { Plugin } from 'vite'

export declare function compressed(): Plugin
