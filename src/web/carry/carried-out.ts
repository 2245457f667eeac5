import { planLink } from '#contract/plan-link.ts'
import { InputProblems } from '#contract/problems.ts'
import type { Bench } from '#web/bench/bench.ts'
import type { Told } from './carry.ts'
import { fileNameOf } from './file-name.ts'

/** Hands the open piece, with the gear it is planned for, to the browser as a job file. */
export async function fileSaved(bench: Bench): Promise<Told | undefined> {
  const job = bench.composed.peek()
  const text = await bench.crew.ask('write', [job]).answer
  const name = fileNameOf(job.piece)
  const url = URL.createObjectURL(new Blob([text], { type: 'application/yaml' }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  document.body.append(link)
  link.click()
  link.remove()
  // The browser takes its time to begin; the address is let go when it surely has.
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
  return { says: `${name} is handed to the browser, which puts it where it puts downloads.` }
}

/** Puts a link that holds the whole plan on the clipboard, or shows it where the browser forbids that. */
export async function linkCopied(bench: Bench): Promise<Told | undefined> {
  let link: string
  try {
    link = await planLink(`${location.origin}/`, bench.composed.peek())
  } catch (error) {
    if (!(error instanceof InputProblems)) throw error
    return { says: 'No link was made.', problems: error.problems, loud: true }
  }
  const about = 'The whole plan is in it; nothing of it is sent to anybody. It opens where Quenchwright answers at this address.'
  try {
    await navigator.clipboard.writeText(link)
    return { says: 'The link is copied.', mend: about }
  } catch {
    // Not served over HTTPS, or refused by the one who was asked.
    return { says: 'This browser does not let a page copy: take the link from here.', mend: about, link }
  }
}
