/**
 * Something outside the code keeps the tool from starting: a setting, a folder in use, a server that does not answer.
 * Its message is one plain sentence for the person who started it; a program ends with it and exit code 1.
 */
export class CannotStart extends Error {
  constructor(sentence: string, options?: ErrorOptions) {
    super(sentence, options)
    this.name = 'CannotStart'
  }
}
