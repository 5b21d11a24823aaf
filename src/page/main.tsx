import '@fontsource-variable/atkinson-hyperlegible-next/wght.css'
import '../figures/figures.css'
import './page.css'
import { render } from 'preact'
import { followJob } from './answers.ts'
import { followBench } from './bench.ts'
import { comeAndGo, openFiles } from './coming-and-going.ts'
import { followParts } from './files.ts'
import { listenForKeys } from './keys.ts'
import { followNumbers } from './old-and-new.ts'
import { Page } from './page.tsx'
import { followShown } from './shown-in.ts'
import { followWhere } from './where.ts'

followShown()
followWhere()
// What lies in the address, or was kept, is asked for first: the empty page needs no working out where a job is to come.
void comeAndGo(followJob)
followBench()
followParts()
followNumbers()
listenForKeys()
const root = document.getElementById('page')
if (root) {
  root.textContent = ''
  render(<Page />, root)
}

addEventListener('dragover', (event) => event.preventDefault())
addEventListener('drop', (event) => {
  event.preventDefault()
  void openFiles([...(event.dataTransfer?.files ?? [])])
})

// Kept by the browser, so that the page opens with no line and no server. Where that is not to be had, it works as long as it is served.
if ('serviceWorker' in navigator) void navigator.serviceWorker.register('offline.js').catch(() => undefined)
