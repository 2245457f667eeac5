import '#web/look/look.css'
import { render } from 'preact'
import { App } from '#web/app/app.tsx'
import { keepEditions } from '#web/app/editions.ts'
import { firstAnswer } from '#web/app/first-answer.ts'
import { loadTheRest } from '#web/app/later.tsx'
import { openBench } from '#web/bench/bench.ts'
import { device } from '#web/bench/device.ts'
import { openShelf } from '#web/shelf/shelf.ts'

const page = document.getElementById('page')
if (page === null) throw new Error('index.html: no element with the id "page"')
const bench = openBench(openShelf(), device())
page.replaceChildren()
const answered = firstAnswer(bench.outlook)
render(<App bench={bench} editions={keepEditions(answered)} />, page)
void answered.then(loadTheRest)
