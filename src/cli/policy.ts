/**
 * What a browser lets the page do: its own scripts, workers, styles and fonts, the solid kernel, and nothing from anywhere else. Said in the
 * page itself and in every answer of the local server.
 */
export const contentPolicy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "font-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ')
