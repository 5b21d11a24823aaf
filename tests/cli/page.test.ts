import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { type IncomingHttpHeaders, request } from 'node:http'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { serve, type Serving } from '../../src/cli/serving.ts'
import { run } from './run.ts'

const folder = mkdtempSync(join(tmpdir(), 'borewright-served-'))
const site = join(folder, 'site')
let serving: Serving

beforeAll(async () => {
  mkdirSync(join(site, 'assets'), { recursive: true })
  writeFileSync(join(folder, 'secret.txt'), 'not for anybody')
  writeFileSync(join(site, 'index.html'), '<!doctype html><title>here</title>')
  writeFileSync(join(site, 'assets/page-1a2b.js'), 'export {}')
  writeFileSync(join(site, 'assets/carve-1a2b.wasm'), new Uint8Array(200_000))
  symlinkSync(join(folder, 'secret.txt'), join(site, 'linked.txt'))
  serving = await serve(site, 0)
})
afterAll(async () => {
  await serving.stop()
  rmSync(folder, { recursive: true, force: true })
})

interface Answer {
  readonly status: number | undefined
  readonly headers: IncomingHttpHeaders
  readonly body: string
}

const ask = (
  path: string,
  more: { method?: string; host?: string; headers?: Record<string, string> } = {},
): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const asked = request(
      {
        host: '127.0.0.1',
        port: serving.port,
        path,
        method: more.method ?? 'GET',
        agent: false,
        headers: { host: more.host ?? `127.0.0.1:${serving.port}`, ...more.headers },
      },
      (answer) => {
        let body = ''
        answer.setEncoding('latin1').on('data', (text: string) => (body += text))
        answer.on('error', reject)
        answer.on('end', () => resolve({ status: answer.statusCode, headers: answer.headers, body }))
      },
    )
    asked.on('error', reject)
    asked.end()
  })

/** What comes back to bytes sent as they are, and how long it took until the line was cut, ms. */
const send = (bytes: string): Promise<{ readonly said: string; readonly after: number }> =>
  new Promise((resolve) => {
    const begun = performance.now()
    let said = ''
    const line = connect(serving.port, '127.0.0.1', () => line.write(bytes))
    line.setEncoding('latin1').on('data', (text: string) => (said += text))
    line.on('error', () => undefined)
    line.on('close', () => resolve({ said, after: performance.now() - begun }))
  })

describe('the local server', () => {
  it('serves what stands in its folder, with its type and its policy', async () => {
    const front = await ask('/')
    expect([front.status, front.headers['content-type'], front.body]).toEqual([
      200,
      'text/html; charset=utf-8',
      '<!doctype html><title>here</title>',
    ])
    const policy = String(front.headers['content-security-policy'])
    for (const rule of [
      "default-src 'none'",
      "script-src 'self' 'wasm-unsafe-eval'",
      "frame-ancestors 'none'",
      "connect-src 'self'",
    ])
      expect(policy).toContain(rule)
    expect(policy).not.toMatch(/'unsafe-(?:inline|eval)'|https?:|\*/)
    expect(front.headers['x-content-type-options']).toBe('nosniff')
    expect(front.headers['referrer-policy']).toBe('no-referrer')
    expect(front.headers['cache-control']).toBe('no-cache')
    const asset = await ask('/assets/page-1a2b.js?v=1')
    expect([asset.status, asset.headers['content-type'], asset.headers['cache-control']]).toEqual([
      200,
      'text/javascript; charset=utf-8',
      'public, max-age=31536000, immutable',
    ])
    const wasm = await ask('/assets/carve-1a2b.wasm')
    expect([wasm.headers['content-type'], wasm.body.length]).toEqual(['application/wasm', 200_000])
  })

  it('answers HEAD without a body', async () => {
    const head = await ask('/index.html', { method: 'HEAD' })
    expect([head.status, head.headers['content-length'], head.body]).toEqual([200, '34', ''])
  })

  it('serves nothing from outside its folder, however it is asked', async () => {
    for (const path of [
      '/../secret.txt',
      '/%2e%2e/secret.txt',
      '/..%2fsecret.txt',
      '/assets/../../secret.txt',
      '/assets/..%5c..%5csecret.txt',
      '/%252e%252e/secret.txt',
      '/..%252fsecret.txt',
      '/..\\\\secret.txt',
      '/assets/%2e%2e/%2e%2e/secret.txt',
      '//secret.txt',
      '/linked.txt',
      '/assets',
      '/assets/',
      '/constructor',
      '/__proto__',
    ]) {
      const { status, body } = await ask(path)
      expect([path, status, body]).toEqual([path, 404, ''])
    }
    for (const path of ['/%', '/%00', '/index.html%00.js', '/%c0%ae%c0%ae/secret.txt'])
      expect([path, (await ask(path)).status]).toEqual([path, 400])
  })

  it('knows this computer alone: another name for it is refused', async () => {
    for (const host of ['evil.example', `evil.example:${serving.port}`, '127.0.0.1', 'localhost', '127.0.0.1:1'])
      expect([host, (await ask('/', { host })).status]).toEqual([host, 421])
    expect((await ask('/', { host: `localhost:${serving.port}` })).status).toBe(200)
    // Nobody says who is called at all.
    expect((await send('GET / HTTP/1.0\r\n\r\n')).said).toMatch(/^HTTP\/1\.1 421 /)
  })

  it('takes GET and HEAD alone, and no body', async () => {
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH', 'TRACE']) {
      const { status, headers } = await ask('/', { method })
      expect([method, status, headers.allow]).toEqual([method, 405, 'GET, HEAD'])
    }
    expect((await ask('/', { headers: { 'content-length': '5' } })).status).toBe(413)
  })

  it('refuses what is no request, too long, or asks to be something else', async () => {
    const host = `Host: 127.0.0.1:${serving.port}\r\n`
    expect((await send('hello\r\n\r\n')).said).toMatch(/^HTTP\/1\.1 400 /)
    expect((await send(`GET http://evil.example/ HTTP/1.1\r\n${host}Connection: close\r\n\r\n`)).said).toMatch(
      /^HTTP\/1\.1 400 /,
    )
    expect((await send(`GET / HTTP/1.1\r\n${host}X: ${'x'.repeat(20_000)}\r\n\r\n`)).said).toMatch(
      /^HTTP\/1\.1 4(?:00|31) /,
    )
    expect((await ask(`/${'a'.repeat(3000)}`)).status).toBe(414)
    expect((await send(`GET / HTTP/1.1\r\n${host}Connection: Upgrade\r\nUpgrade: websocket\r\n\r\n`)).said).toBe('')
    expect((await send('CONNECT 127.0.0.1:22 HTTP/1.1\r\n\r\n')).said).toBe('')
    // It is still there for whoever asks properly.
    expect((await ask('/')).status).toBe(200)
  })

  it('does not wait for whoever never ends a request', { timeout: 20_000 }, async () => {
    const { after } = await send(`GET / HTTP/1.1\r\nHost: 127.0.0.1:${serving.port}\r\nX-Slow: `)
    expect(after).toBeLessThan(12_000)
  })

  it('never sends more or less than it promised, though a file is built anew meanwhile', {
    timeout: 20_000,
  }, async () => {
    const path = join(site, 'assets/page-1a2b.js')
    writeFileSync(path, 'export {}; // longer than it was')
    expect((await ask('/assets/page-1a2b.js')).body).toBe('export {}')
    writeFileSync(path, 'short')
    await expect(ask('/assets/page-1a2b.js')).rejects.toThrow()
    writeFileSync(path, 'export {}')
    expect((await ask('/assets/page-1a2b.js')).body).toBe('export {}')
  })

  it('is bound to this computer and nothing else', async () => {
    // 127.0.0.2 is this computer too, and whoever listens everywhere answers there.
    const other = await new Promise<string>((resolve) => {
      const line = connect(serving.port, '127.0.0.2')
      line.on('connect', () => {
        line.destroy()
        resolve('answered')
      })
      line.on('error', () => resolve('refused'))
    })
    expect(other).toBe('refused')
  })
})

describe('borewright page', () => {
  it('says so where the page has not been built', async () => {
    const { status, out, err } = await run(folder, ['page', '--no-open', '--port', '0'])
    expect([status, out]).toEqual([2, ''])
    expect(err).toContain('npm run prepare')
  })

  it('refuses a port that is none', async () => {
    for (const port of ['99999', '8e3', '-1', 'http']) {
      const { status, err } = await run(folder, ['page', '--no-open', `--port=${port}`])
      expect([port, status]).toEqual([port, 2])
      expect(err).toContain('65535')
    }
  })
})
