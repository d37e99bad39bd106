"""Movements that books put down to one another, so that they may not stand against each other."""

from collections.abc import Mapping

_KIN_MOVEMENTS: Mapping[str, tuple[str, ...]] = {
    "horizontal_adduction": ("adduction", "flexion"),
    "horizontal_abduction": ("abduction", "extension"),
    "opposition": ("flexion", "abduction", "adduction"),
    "reposition": ("extension", "abduction", "adduction"),
    "radial_deviation": ("abduction",),
    "ulnar_deviation": ("adduction",),
    "upward_rotation": ("abduction", "lateral_rotation", "posterior_tilt"),
    "downward_rotation": ("adduction", "medial_rotation", "anterior_tilt"),
    "anterior_tilt": ("forward_tilt",),
    "posterior_tilt": ("backward_tilt",),
    "protraction": ("abduction", "anterior_tilt"),
    "retraction": ("adduction", "posterior_tilt"),
    "opening": ("elevation", "depression", "abduction", "dilation"),
    "closure": ("elevation", "depression", "adduction", "constriction"),
    "tension": ("lengthening", "forward_tilt", "damping", "medial_pull", "retraction"),
    "relaxation": ("shortening", "backward_tilt", "thickening"),
    "constriction": ("adduction", "depression", "medial_rotation"),
    "dilation": ("abduction", "elevation", "lateral_rotation"),
    "shortening": ("thickening", "retrusion", "transverse_broadening"),
    "lengthening": ("flattening", "protrusion", "transverse_narrowing"),
}
"""Movements that are part of, or another book's word for, one another."""
_MOVING_AS_ONE = (
    ("wrist", "intercarpal_joints"),
    ("sternoclavicular", "acromioclavicular", "scapulothoracic"),
    ("atlanto_occipital_joints", "atlanto_axial_joints", "cervical_intervertebral_joints"),
    ("thoracic_intervertebral_joints", "lumbar_intervertebral_joints", "lumbosacral_joint"),
    ("costovertebral_joints", "sternocostal_joints"),
    ("upper_eyelid_over_eyeball", "lower_eyelid_over_eyeball", "palpebral_fissure"),
    ("eyebrow_over_frontal_bone", "forehead_skin_over_frontal_bone", "scalp_over_skull"),
    ("ala_of_nose_over_maxilla", "tip_of_nose_over_septum", "nostril"),
    ("upper_lip_over_teeth", "angle_of_mouth_over_teeth", "oral_fissure"),
    ("lower_lip_over_teeth", "angle_of_mouth_over_teeth", "oral_fissure"),
    ("malleus_and_tympanic_membrane", "stapes_in_oval_window", "chain_of_auditory_ossicles"),
    ("hyoid_bone_in_neck", "larynx_in_neck", "pharynx_in_neck"),
    ("tongue_in_mouth", "body_of_tongue"),
    ("soft_palate_on_hard_palate", "pharyngeal_isthmus", "isthmus_of_fauces"),
    ("cavity_of_pharynx", "pharyngeal_isthmus", "entrance_of_esophagus"),
    ("vocal_folds", "cricoarytenoid_joints", "cricothyroid_joints", "laryngeal_inlet"),
    ("epiglottis_over_laryngeal_inlet", "laryngeal_inlet"),
    ("talocrural_joint", "subtalar_joint", "transverse_tarsal_joint"),
)
"""Joints to which books put down the same movement."""


def movement_overlap(movement: str) -> frozenset[str]:
    """A movement and those of which it is a part or another word."""
    wider = (whole for whole, parts in _KIN_MOVEMENTS.items() if movement in parts)
    return frozenset((movement, *_KIN_MOVEMENTS.get(movement, ()), *wider))


def action_overlap(action: str) -> frozenset[str]:
    """The same for `joint.movement`; joints that move as one are taken together."""
    joint, _, movement = action.partition(".")
    joints = {joint}.union(*(group for group in _MOVING_AS_ONE if joint in group))
    return frozenset(f"{one}.{kin}" for one in joints for kin in movement_overlap(movement))
