package evenrise.solver.report;

import evenrise.model.answer.Alternative;
import evenrise.model.plan.BoardSetting;

/** Names what brings a load to another place. */
final class ChangeWords {
    private ChangeWords() {}

    /** {@code output of DSP-2}. */
    static String of(Alternative alternative) {
        String other = alternative.exchangedWith().orElse("");
        return switch (alternative.change().way()) {
            case SLOT -> "free slot" + alike(alternative);
            case OUTPUT -> "free output";
            case BOTH -> "free slot, output" + alike(alternative);
            case SLOTS_EXCHANGED -> "slot of " + other;
            case OUTPUTS_EXCHANGED -> "output of " + other;
            case PLACES_EXCHANGED -> "place of " + other;
            case SETTING -> setting(alternative.change().setting().orElseThrow());
            case TIME -> "another time";
        };
    }

    private static String alike(Alternative alternative) {
        return alternative.alike() == 1 ? "" : " (" + alternative.alike() + ")";
    }

    private static String setting(BoardSetting setting) {
        return "delay " + Numbers.seconds(setting.startDelaySeconds()) + " s, step "
                + Numbers.seconds(setting.stepSeconds()) + " s";
    }

    /** A difference, with its sign: {@code +0.31}. */
    static String signed(double difference) {
        String text = Numbers.fixed(difference, 2);
        return text.startsWith("-") || text.equals("0.00") ? text : "+" + text;
    }
}
