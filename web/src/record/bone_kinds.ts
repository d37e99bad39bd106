/** Bones with a shaft between two ends. All others are short, flat or irregular.
 *
 * Source: OpenStax Anatomy and Physiology 2e, section 6.2 (classification of bones); for the clavicle Gray, Anatomy
 * of the Human Body, 1918. Both from memory. */
const WITH_A_SHAFT = /humerus|radius|ulna|femur|tibia|fibula|clavicle|metacarpal|metatarsal|phalan/i;

/** How a bone is drawn, from its name: long ones with a shaft, all others as a plate. Neither is to scale. */
export function boneKind(name: string): "long" | "plate" {
  return WITH_A_SHAFT.test(name) ? "long" : "plate";
}
