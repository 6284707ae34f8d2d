package evenrise.solver.intake;

import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import java.util.List;
import java.util.Optional;

/** Tells whether a control may switch what a row holds: by the columns for it, else by words of role, name and remarks. */
final class ServiceReader {
    private final ReadTable sheet;
    private final CellReader figures;
    private final Notices notices;
    private final boolean placesLifeSafety;

    ServiceReader(ReadTable sheet, CellReader figures, Notices notices, boolean placesLifeSafety) {
        this.sheet = sheet;
        this.figures = figures;
        this.notices = notices;
        this.placesLifeSafety = placesLifeSafety;
    }

    /** Empty where a cell says something else, which is a problem that is noted. */
    Optional<Service> of(ReadTable.Row row, String name, int pieces) {
        String safety = HeaderWords.words(figures.text(row, Meaning.LIFE_SAFETY));
        String switched = HeaderWords.words(figures.text(row, Meaning.SWITCHED));
        String words = words(row, name);
        boolean isOpen = figures.isLeftOpen(row, Meaning.LIFE_SAFETY) || figures.isLeftOpen(row, Meaning.SWITCHED);
        if (figures.isLeftOpen(row, Meaning.LIFE_SAFETY)) {
            safety = "";
        }
        boolean isHere = Service.isHere(safety) || Service.isHere(switched);
        boolean isSafety = isHere
                || Service.isYes(safety)
                || Service.saysLifeSafety(safety + " " + switched)
                || safety.isEmpty() && Service.saysLifeSafety(words);
        if (isSafety) {
            figures.readByName(row, Meaning.LIFE_SAFETY, "life safety", ReadValue.How.GUESSED);
            return Optional.of(lifeSafety(row, name, pieces, isHere || placesLifeSafety));
        }
        if (isOpen) {
            figures.readByName(row, Meaning.SWITCHED, "unswitched until somebody says", ReadValue.How.ASKED);
            ask(
                    row,
                    "the list leaves open whether '" + CellReader.cut(name)
                            + "' is switched, or is life safety. Until it says so, it is left unswitched.");
            return Optional.of(Service.ASKED);
        }
        if (!safety.isEmpty() && !Service.isNo(safety)) {
            return odd(row, Meaning.LIFE_SAFETY, "yes, no, or place where it is to have a place here");
        }
        if (!switched.isEmpty() && !Service.isYes(switched) && !Service.isNo(switched)) {
            return odd(row, Meaning.SWITCHED, "yes, no or life safety");
        }
        if (Service.isNo(switched) || switched.isEmpty() && Service.saysLeaveOn(words)) {
            figures.readByName(
                    row,
                    Meaning.SWITCHED,
                    "unswitched",
                    switched.isEmpty() ? ReadValue.How.GUESSED : ReadValue.How.STATED);
            return Optional.of(Service.UNSWITCHED);
        }
        Optional<String> asked = switched.isEmpty() ? Service.asked(HeaderWords.words(name)) : Optional.empty();
        asked.ifPresent(why ->
                figures.readByName(row, Meaning.SWITCHED, "unswitched until somebody says", ReadValue.How.ASKED));
        asked.ifPresent(why -> ask(
                row,
                "may '" + CellReader.cut(name) + "' be switched? " + why
                        + ". Until a column 'Switched' says yes, it is left unswitched."));
        return Optional.of(asked.isPresent() ? Service.ASKED : Service.SWITCHED);
    }

    String clauses(ReadTable.Row row, String name) {
        return Service.clauses(words(row, name));
    }

    private String words(ReadTable.Row row, String name) {
        return HeaderWords.words(
                String.join(" ; ", List.of(figures.text(row, Meaning.ROLE), name, figures.text(row, Meaning.NOTES))));
    }

    private Service lifeSafety(ReadTable.Row row, String name, int pieces, boolean isPlaced) {
        String what = (pieces == 1 ? "'" : pieces + " × '") + CellReader.cut(name) + "'";
        if (isPlaced) {
            ask(
                    row,
                    what
                            + " is life safety and was asked for here: it is unswitched and each piece alone on its"
                            + " breaker. Does everybody concerned agree that it is fed"
                            + " here? [" + clauses(row, name) + "]");
            return Service.LIFE_SAFETY_HERE;
        }
        notices.add(new Notice(
                Notice.Kind.OUTSIDE,
                Notice.place(sheet, row.number()),
                what + " is life safety: fed by others, by circuits of its own [" + clauses(row, name) + "]"));
        return Service.LIFE_SAFETY;
    }

    private Optional<Service> odd(ReadTable.Row row, Meaning meaning, String expected) {
        figures.problem(
                row, meaning, "'" + CellReader.cut(figures.text(row, meaning)) + "', expected " + expected + ".");
        return Optional.empty();
    }

    private void ask(ReadTable.Row row, String text) {
        notices.add(new Notice(Notice.Kind.QUESTION, Notice.place(sheet, row.number()), text));
    }
}
