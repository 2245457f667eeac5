import { CannotListen, PageNotBuilt, type Served, serve, USUAL_PORT } from '#server/serve.ts'
import type { Asked } from './actions.ts'
import { InputFault } from './faults.ts'
import type { Surroundings } from './surroundings.ts'
import { set } from './terminal.ts'

/** Hands out the page until it is told to stop. */
export async function serveCommand({ port, host }: Asked<'serve'>, { terminal, print, stopped }: Surroundings): Promise<void> {
  // Listened for before the address is said: whoever reads it may end the program at once.
  const end = stopped()
  const served = await begun({ ...(port === undefined ? {} : { port }), ...(host === undefined ? {} : { host }) })
  const say = (text: string) => print(set(text, terminal.columns))
  print(`Quenchwright: ${terminal.strong(served.address)}`)
  say('Open it in a browser. It keeps working there when this ends; Ctrl-C ends it.')
  if (served.moved)
    say(
      `The usual port ${USUAL_PORT} is taken, perhaps by another Quenchwright. A browser keeps pieces by address: those made at the usual one are not at this one.`,
    )
  if (served.elsewhere.length > 0) {
    say(`From other machines of your network: ${served.elsewhere.join(' ')}`)
    say(
      'There a browser neither installs it nor keeps it for use without network: that needs HTTPS, as a reverse proxy gives it.',
    )
  }
  await end
  await served.close()
  print('Ended.')
}

async function begun(options: Parameters<typeof serve>[0]): Promise<Served> {
  try {
    return await serve(options)
  } catch (error) {
    if (error instanceof CannotListen || error instanceof PageNotBuilt) throw new InputFault(`serve: ${error.message}`)
    throw error
  }
}
