/**
 * What the station's pages may do, sent with every answer. Everything comes from the station itself; nothing is
 * evaluated from text, framed, or sent elsewhere.
 *
 * @param nonce marks the one kind of style sheet that a page makes for itself; null where there is no page
 * @source Content Security Policy Level 3, Referrer Policy, Fetch, Permissions Policy; from memory
 */
export function pagePolicy(nonce: string | null): Readonly<Record<string, string>> {
  const policy = [
    "default-src 'none'",
    "script-src 'self'",
    `style-src 'self'${nonce === null ? '' : ` 'nonce-${nonce}'`}`,
    "worker-src 'self'",
    "connect-src 'self'",
    "img-src 'self' data:",
    "font-src 'self'",
    "manifest-src 'self'",
    "frame-ancestors 'none'",
    "base-uri 'none'",
    "form-action 'self'",
  ];
  return {
    'Content-Security-Policy': policy.join('; '),
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Permissions-Policy': 'camera=(self), microphone=(), geolocation=(), usb=(), payment=()',
  };
}
