import type { Plugin } from 'vite'

export declare function licences(fileName: string, also: readonly string[]): { readonly page: Plugin; readonly thread: Plugin }
