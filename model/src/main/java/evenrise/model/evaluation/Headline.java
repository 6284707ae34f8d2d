package evenrise.model.evaluation;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.plan.Assessment;
import java.util.ArrayList;
import java.util.List;

/** An assessment in a sentence that never calls a part the whole. */
final class Headline {
    private Headline() {}

    /** @param counts whose own headline is not read */
    static String of(Assessment counts) {
        List<String> parts = new ArrayList<>();
        if (counts.isBroken()) {
            parts.add(broken(counts));
        }
        parts.add(checks(counts));
        if (counts.eventsOverLimit() > 0) {
            parts.add(Phrase.counted(counts.eventsOverLimit(), "peak") + " of events over an inrush limit");
        }
        if (counts.loadsWithoutPlace() > 0) {
            parts.add(withoutPlace(counts));
        }
        if (counts.guessedFields() > 0) {
            parts.add(Phrase.counted(counts.guessedFields(), "field") + " guessed");
        }
        if (counts.loadsWithoutInrush() > 0) {
            parts.add(Phrase.counted(counts.loadsWithoutInrush(), "load") + " without stated inrush");
        }
        return String.join("; ", parts) + ".";
    }

    /** What the figures leave out. */
    static String withoutPlace(Assessment counts) {
        return "without " + Phrase.counted(counts.loadsWithoutPlace(), "load") + " that "
                + (counts.loadsWithoutPlace() == 1 ? "has" : "have") + " no place, "
                + Decimals.toThousandths(Math.round(counts.withoutPlaceAmps() * 10) / 10.0) + " A a phase";
    }

    private static String broken(Assessment counts) {
        int all = counts.hardRulesBroken() + counts.limitsBroken();
        List<String> kinds = new ArrayList<>();
        if (counts.hardRulesBroken() > 0) {
            kinds.add(counts.hardRulesBroken() + " of hard rules");
        }
        if (counts.limitsBroken() > 0) {
            kinds.add(counts.limitsBroken() + " electrical");
        }
        return Phrase.counted(all, "limit") + " broken (" + String.join(", ", kinds) + ")";
    }

    private static String checks(Assessment counts) {
        int all = counts.checksMade() + counts.checksNotMade();
        String rules = !counts.isBroken() ? "every hard rule kept; " : "";
        if (counts.checksMade() == 0) {
            return rules + "no electrical check made";
        }
        String made = counts.checksNotMade() == 0
                ? "all " + Phrase.counted(all, "electrical check") + " made"
                : counts.checksMade() + " of " + Phrase.counted(all, "electrical check") + " made";
        return rules + made + (counts.isBroken() ? "" : ", none broken");
    }
}
