export async function runSuite(): Promise<void> {}
