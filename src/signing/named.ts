/** What a certificate says of the one whom it names. */
export interface Named {
  /** Lower-case hex. */
  certificateSha256: string;
  /** As the certificate writes it, such as `CN=Harrow Creek Transport`. */
  subject: string;
}
