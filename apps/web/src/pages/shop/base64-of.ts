/** A file's bytes as base64 text. */
export function base64Of(file: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result).replace(/^[^,]*,/, ''));
    reader.onerror = () => reject(new Error('The file could not be read. Choose it again.'));
    reader.readAsDataURL(file);
  });
}
