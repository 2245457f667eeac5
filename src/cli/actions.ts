import type { CardSize } from '#report/card-sizes.ts'
import type { System } from '#units/length.ts'

/** Asked of every command. */
export interface Shared {
  readonly json?: boolean
  readonly units: System
  readonly sources?: boolean
}

export interface Trials {
  readonly members?: number
  readonly seed?: number
}

/** What was asked on the command line. */
export type Action =
  | (Shared &
      Trials & {
        readonly ask: 'forecast'
        readonly job: string
        readonly report?: string
        readonly draft?: boolean
        readonly fine?: boolean
      })
  | (Shared &
      Trials & {
        readonly ask: 'plan'
        readonly job: string
        readonly report?: string
        readonly take?: number
        readonly out?: string
      })
  | (Shared &
      Trials & {
        readonly ask: 'card'
        readonly job: string
        readonly size: CardSize
        readonly out?: string
        readonly address?: string
        readonly draft?: boolean
        readonly fine?: boolean
      })
  | (Shared & {
      readonly ask: 'steel'
      readonly name: string | undefined
      readonly analysis?: string
      readonly grainSize?: string
      readonly austenitise?: string
      readonly temper?: string
      readonly hold?: string
      readonly times?: number
    })
  | (Shared & { readonly ask: 'convert'; readonly hardness: string; readonly scale: string })
  | (Shared & { readonly ask: 'schema'; readonly name: string })
  | (Shared & { readonly ask: 'tour'; readonly report?: string })
  | { readonly ask: 'serve'; readonly port?: number; readonly host?: string }
  | { readonly ask: 'unbuilt'; readonly name: string; readonly description: string }

export type Asked<Ask extends Action['ask']> = Extract<Action, { ask: Ask }>
