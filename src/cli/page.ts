import { exits, type Verb, word } from './verb.ts'

/** The same port each time: what the browser keeps for the page, it keeps by this address. */
const usualPort = 8247

export const page: Verb = {
  name: 'page',
  takes: '',
  things: [0, 0],
  says: 'open the page: the same job worked out in the browser, served from this computer to this computer alone',
  flags: [
    { name: 'port', takes: 'N', says: `the port that it is served from; left out: ${usualPort}, or any that is free` },
    { name: 'no-open', says: 'say the address, and leave the browser alone' },
  ],
  run: async (asked, desk) => {
    const given = word(asked, 'port')
    const port = given === undefined ? usualPort : Number(given)
    if (!/^\d{1,5}$/.test(given ?? '0') || port > 65535) {
      desk.complain(`--port wants a whole number from 0 to 65535, and was given '${given}'.`)
      return exits.unreadable
    }
    const [{ serve }, { openInBrowser, pageFolder, untilStopped }] = await Promise.all([
      import('./serving.ts'),
      import('./opening.ts'),
    ])
    const folder = pageFolder()
    if (folder === undefined) {
      desk.complain('The page has not been built here: npm run prepare builds it.')
      return exits.unreadable
    }
    const taken = (error: unknown): boolean => error instanceof Error && 'code' in error && error.code === 'EADDRINUSE'
    const refused = (error: unknown): string =>
      taken(error) ? 'somebody else has it' : error instanceof Error ? error.message : String(error)
    let serving: Awaited<ReturnType<typeof serve>>
    try {
      serving = await serve(folder, port).catch((error: unknown) => {
        if (given !== undefined || !taken(error)) throw error
        desk.complain(`Port ${port} is taken: what the browser has kept for the page is not seen from another.`)
        return serve(folder, 0)
      })
    } catch (error) {
      desk.complain(`The page cannot be served from port ${port}: ${refused(error)}.`)
      return exits.unreadable
    }
    const address = `http://127.0.0.1:${serving.port}/`
    desk.say(`The page is at ${address}\nCtrl+C stops it. Nothing leaves this computer.`)
    if (!asked.switches.has('no-open') && !openInBrowser(address)) desk.say('Open that address in a browser.')
    await untilStopped()
    await serving.stop()
    return exits.sound
  },
}
