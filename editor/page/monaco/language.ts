/** What monaco calls the language of recipes. */
export const language = "chalkline";
