/**
 * The HTTP service: one file per resource.
 *
 * <p><b>What.</b> The API under {@code /api}, the pages, and shares under {@code /s}. A resource reads the request, calls
 * one method of the notebook, writes the answer; whatever is thrown becomes a problem (RFC 9457) in one place.
 *
 * <p><b>Conventions.</b> ETags are {@code "r7"}, the revision's number; saving needs {@code If-Match} (RFC 9110, section
 * 13; RFC 6585). JSON fields without a value are absent, never null.
 *
 * <p><b>Left out.</b> Encryption: where players come from elsewhere, a web server in front of this one speaks HTTPS.
 */
package rosinbook.web;
