/** Of a button that is clicked on: whoever types in the sheet goes on typing there. By keyboard it is reached as before. */
export const keepKeys = (event: MouseEvent): void => event.preventDefault();
