import type { Hono } from 'hono'
import type { Env } from './parts.ts'

/** The certificate of the authority, for a phone to install: no secret, served to whoever asks. */
export function authorityApi(app: Hono<Env>, pem: () => string): void {
  app.get(
    '/authority.crt',
    () =>
      new Response(Buffer.from(pem().replace(/-----[^-]+-----|\s/g, ''), 'base64'), {
        headers: {
          'content-type': 'application/x-x509-ca-cert',
          'content-disposition': 'attachment; filename="castwright-authority.crt"'
        }
      })
  )
}
