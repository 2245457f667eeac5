/** Where the built page is handed out. */
export interface Served {
  readonly address: string
  readonly close: () => Promise<void>
}
