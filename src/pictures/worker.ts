// Draws pictures beside the main thread.
export {};
