/** What the server answered to a file; `status` 0 where it could not be reached. */
export interface SentFile {
  status: number;
  text: string;
}

/** Sends a file and tells how many of its bytes have gone, which `fetch` does not. */
export function sendFile(address: string, file: Blob, onSent: (bytes: number) => void): Promise<SentFile> {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open('POST', address);
    request.setRequestHeader('content-type', 'application/octet-stream');
    request.upload.addEventListener('progress', ({ loaded }) => onSent(loaded));
    request.upload.addEventListener('load', () => onSent(file.size));
    request.addEventListener('load', () => resolve({ status: request.status, text: request.responseText }));
    request.addEventListener('error', () => resolve({ status: 0, text: '' }));
    request.addEventListener('abort', () => resolve({ status: 0, text: '' }));
    request.send(file);
  });
}
