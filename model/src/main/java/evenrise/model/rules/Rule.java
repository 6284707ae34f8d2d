package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import java.util.List;

/** One hard rule. It reads a layout and never fails, however broken the plan behind it is. */
public interface Rule {
    /** Name of the rule in files, on screens and in docs/rules.md, such as {@code group-whole}. */
    String id();

    /** Every place where the layout breaks the rule, in parts; empty where it is kept. */
    List<BrokenRule> broken(Layout layout);

    /**
     * Whether something that it found in a layout of what is on counts while other loads are off for work. It does unless
     * the rule says otherwise, as those of order and of peaks do: they are for a plant that comes up as a whole.
     */
    default boolean countsWhilePartsAreOff(BrokenRule found, ProjectIndex index) {
        return true;
    }
}
