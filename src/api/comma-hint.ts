/** Where decimal commas are read; whoever writes JSON has a number to send and needs none. */
export const COMMAS_READ = 'in a query or a sheet ?decimal=comma has decimal commas read'
