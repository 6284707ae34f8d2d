package evenrise.solver.report;

import java.util.ArrayList;
import java.util.List;

/** Sentences with their tone, before it is known whether they are wrapped for a screen or set on a page. */
final class SaidLines {
    private final List<Said> all = new ArrayList<>();

    record Said(Tone tone, String text) {}

    SaidLines text(String text) {
        return text(Tone.PLAIN, text);
    }

    SaidLines text(Tone tone, String text) {
        all.add(new Said(tone, text));
        return this;
    }

    List<Said> all() {
        return List.copyOf(all);
    }
}
