declare module 'heic-decode' {
  export default function decode(input: {
    buffer: Uint8Array;
  }): Promise<{ width: number; height: number; data: Uint8ClampedArray<ArrayBuffer> }>;
}

/** What is used of it; the library's types have it only together with the browser. */
declare namespace WebAssembly {
  interface Memory {
    readonly buffer: ArrayBuffer;
    grow(pages: number): number;
  }
  const Memory: { readonly prototype: Memory };
}
