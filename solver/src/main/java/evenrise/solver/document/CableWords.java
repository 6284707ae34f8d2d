package evenrise.solver.document;

import evenrise.model.contract.Words;
import evenrise.model.project.Cable;
import java.util.ArrayList;
import java.util.List;

/** A cable as schedules and drawings name it. */
final class CableWords {
    private CableWords() {}

    /** {@code 12 AWG}, {@code 2 × 4/0 AWG}, {@code 2.5 mm²}: of a line conductor. */
    static String size(Cable cable) {
        return (cable.sets() > 1 ? cable.sets() + " × " : "") + squared(cable.size());
    }

    /** All that the project says of it. */
    static String whole(Cable cable, SheetWords words) {
        List<String> parts = new ArrayList<>(List.of(words.number(size(cable))));
        cable.protectiveSize().ifPresent(size -> parts.add(words.say("cable.protective", words.number(squared(size)))));
        parts.add(words.say("cable." + Words.word(cable.material())));
        parts.add(words.number(Unrounded.rated(cable.lengthMetres())) + " m");
        return String.join(", ", parts);
    }

    private static String squared(String size) {
        return Plain.text(size.replace("mm2", "mm²"), 24);
    }
}
