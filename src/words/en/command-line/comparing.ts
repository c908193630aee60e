export const comparing = {
  planningEachWayOf: (done: number, of: number) => `Planning each way: ${done} of at most ${of}`,
};
