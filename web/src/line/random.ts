/** An id that no other message of this room has. `randomUUID` is missing on plain http, so 16 random bytes. */
export function newMessageId(): string {
  return randomHex(16);
}

/** So many random bytes, in hexadecimal. */
export function randomHex(bytes: number): string {
  const drawn = crypto.getRandomValues(new Uint8Array(bytes));
  return Array.from(drawn, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
