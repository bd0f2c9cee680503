/** Has every run reduced once, so that no test has to wait for the work that they all share. */
export async function reduceAll(address: string): Promise<void> {
  const get = async (path: string) => (await fetch(`${address}/api/projects${path}`)).json();
  const { projects } = await get("");
  for (const project of projects) {
    const { runs } = await get(`/${project.id}/runs`);
    for (const run of runs) await get(`/${project.id}/runs/${run.id}/reduction`);
  }
}
