import type { Plugin } from 'vite'

export declare const yamlModules: Plugin
