/** Lets whatever else is due have its turn: messages, timers, painting. */
export const pause = (time = 0) => new Promise<void>((resolve) => setTimeout(resolve, time));
