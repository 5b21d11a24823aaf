import { createReadStream } from 'node:fs'
import { readdir, stat } from 'node:fs/promises'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { extname, join, relative, sep } from 'node:path'
import { contentPolicy } from './policy.ts'

/** Requests are short and few: whoever sends more, or takes longer, is not the page. Bytes and milliseconds. */
const longestAddress = 2048
const longestHead = 8192
const slowestHead = 5_000
const slowestReader = 20_000
const mostConnections = 64

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.md': 'text/plain; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
}

const always: Readonly<Record<string, string>> = {
  'Content-Security-Policy': `${contentPolicy}; frame-ancestors 'none'`,
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=()',
}

interface Served {
  readonly path: string
  readonly size: number
}

/** Every plain file of the folder by the address that it answers to. What is not listed when the server starts is never served. */
const listed = async (folder: string): Promise<ReadonlyMap<string, Served>> => {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  const files = new Map<string, Served>()
  for (const entry of entries) {
    if (!entry.isFile()) continue
    const path = join(entry.parentPath, entry.name)
    const { size } = await stat(path)
    files.set(`/${relative(folder, path).split(sep).join('/')}`, { path, size })
  }
  const front = files.get('/index.html')
  if (front) files.set('/', front)
  return files
}

export interface Serving {
  readonly port: number
  readonly stop: () => Promise<void>
}

/**
 * Serves the files of a folder to this computer alone: bound to 127.0.0.1, to nobody who calls it by another name, and nothing but what stood
 * in the folder at the start. Port 0: any that is free. Throws what `listen` throws (EADDRINUSE, EACCES).
 */
export const serve = async (folder: string, port: number): Promise<Serving> => {
  const files = await listed(folder)
  const server: Server = createServer(
    {
      maxHeaderSize: longestHead,
      headersTimeout: slowestHead,
      requestTimeout: slowestHead,
      keepAliveTimeout: slowestHead,
      connectionsCheckingInterval: 1000,
    },
    (request, response) => answer(request, response, files, (server.address() as AddressInfo).port),
  )
  server.maxConnections = mostConnections
  server.setTimeout(slowestReader, (socket) => socket.destroy())
  server.on('clientError', (_, socket) => {
    if (socket.writable) socket.end('HTTP/1.1 400 Bad Request\r\nConnection: close\r\nContent-Length: 0\r\n\r\n')
    else socket.destroy()
  })
  for (const asking of ['upgrade', 'connect'] as const) server.on(asking, (_, socket) => socket.destroy())
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, '127.0.0.1', resolve)
  })
  return {
    port: (server.address() as AddressInfo).port,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}

const answer = (
  request: IncomingMessage,
  response: ServerResponse,
  files: ReadonlyMap<string, Served>,
  port: number,
): void => {
  const refuse = (status: number, more: Readonly<Record<string, string>> = {}): void => {
    response.writeHead(status, { ...always, ...more, 'Content-Length': 0, Connection: 'close' })
    response.end()
  }
  // A page of another name that is led to this computer (DNS rebinding) calls it by that name.
  if (![`127.0.0.1:${port}`, `localhost:${port}`].includes(request.headers.host ?? '')) return refuse(421)
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405, { Allow: 'GET, HEAD' })
  const { headers } = request
  if (headers['transfer-encoding'] !== undefined || Number(headers['content-length'] ?? 0) !== 0) return refuse(413)
  const asked = request.url ?? ''
  if (asked.length > longestAddress) return refuse(414)
  const path = pathOf(asked)
  if (path === undefined) return refuse(400)
  const file = files.get(path)
  if (file === undefined) return refuse(404)
  response.writeHead(200, {
    ...always,
    'Content-Type': types[extname(file.path)] ?? 'application/octet-stream',
    'Content-Length': file.size,
    // Names under assets/ carry a digest of their bytes.
    'Cache-Control': path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
  })
  if (request.method === 'HEAD') {
    response.end()
    return undefined
  }
  // What was built anew meanwhile is another file: never more than was promised, and what is cut short is no answer.
  const stream = createReadStream(file.path, { end: Math.max(0, file.size - 1) })
  stream.on('error', () => response.destroy())
  stream.on('end', () => {
    if (stream.bytesRead < file.size) response.destroy()
  })
  response.on('close', () => stream.destroy())
  stream.pipe(response)
  return undefined
}

/** The path of an address, without what stands after `?`; `undefined` where it cannot be read. */
const pathOf = (address: string): string | undefined => {
  const [path = ''] = address.split('?')
  try {
    const read = decodeURIComponent(path)
    return path.startsWith('/') && !read.includes('\u0000') ? read : undefined
  } catch {
    return undefined
  }
}
