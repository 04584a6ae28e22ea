// Stands for a numerical library's formatter of error messages: they are about wrong types, which ours rule out.
module.exports = (text) => text
