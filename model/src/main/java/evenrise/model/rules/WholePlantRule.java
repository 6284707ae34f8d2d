package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;

/**
 * A rule for a plant that comes up as a whole. While parts are off for work what it finds does not count: a single load comes
 * on by itself, whoever is off is not in the layout, and what is to stay free may be used.
 */
interface WholePlantRule extends Rule {
    @Override
    default boolean countsWhilePartsAreOff(BrokenRule found, ProjectIndex index) {
        return false;
    }
}
