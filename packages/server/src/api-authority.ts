import type { Hono } from 'hono'
import type { Env } from './parts.ts'

/** The certificate of the authority, for a phone to install: no secret, served to whoever asks. */
export function authorityApi(app: Hono<Env>, pem: string): void {
  const der = Buffer.from(pem.replace(/-----[^-]+-----|\s/g, ''), 'base64')
  app.get(
    '/authority.crt',
    () =>
      new Response(der, {
        headers: {
          'content-type': 'application/x-x509-ca-cert',
          'content-disposition': 'attachment; filename="castwright-authority.crt"'
        }
      })
  )
}
