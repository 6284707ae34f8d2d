package evenrise.solver.intake;

import evenrise.solver.table.HeaderWords;
import java.util.regex.Pattern;

/** The words by which a list leaves something open in English, German, French and Spanish: TBC, by others, a question mark. */
final class LeftOpen {
    private static final Pattern WORDS = Pattern.compile(
            "\\?+|t\\.?b\\.?[acdn]\\.?|n/?a|n\\.a\\.|to be (confirmed|advised|announced|determined|defined|checked)|by"
                    + " (others?|owner|client|vendor|supplier)|(not (yet )?|un)known|unk"
                    + "|not sure|don't know|dunno|ask|see (plans?|drawings?|schedule|specs?|notes?)( [0-9]+)?|various|as required|(lt\\.?|laut|gem\\.?) (plan|hersteller)|n\\.? ?n\\.?|noch offen|nicht bekannt|unklar|voir (plan|notice)|ver planos?|offen|unbekannt|bauseits|wird nachgereicht|k\\.? ?a\\.?|a (confirmer|definir|preciser)|par"
                    + " (d'autres|autrui)|inconnue?|por (confirmar|definir|otros)|desconocid[oa]");

    /** Longer texts are sentences. */
    private static final int LONGEST = 40;

    private LeftOpen() {}

    static boolean is(String text) {
        return text.length() <= LONGEST
                && WORDS.matcher(HeaderWords.folded(text)
                                .replaceAll("^[(\\[*]+|[)\\]*]+$", "")
                                .strip())
                        .matches();
    }
}
