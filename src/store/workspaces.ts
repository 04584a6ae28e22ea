/** Name of the workspace that everything belongs to while the server belongs to nobody, and of whoever claims it first. */
export const onlyWorkspace = 'default'
