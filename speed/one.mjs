// One variant in its own process, so that no kernel has been warmed or made polymorphic by another.
const [, , file, name] = process.argv
const { variants } = await import(file)
const variant = variants.find(v => v.name === name)
console.log(JSON.stringify(await variant.run()))
