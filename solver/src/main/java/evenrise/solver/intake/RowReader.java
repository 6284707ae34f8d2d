package evenrise.solver.intake;

import evenrise.model.electrical.LinePower;
import evenrise.model.intake.Mapping;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads the rows below a header, each into pieces of equipment or into problems with their places. */
final class RowReader {
    private static final int MOST_PIECES = 10_000;
    private static final int LONGEST_NAME = 120;

    /** Usual figures where a list is silent; common practice, no source. */
    static final double POWER_FACTOR = 0.95;

    private static final Map<Role, Double> IDLE_RATIO =
            Map.of(Role.PROCESSING, 0.9, Role.AUXILIARY, 1.0, Role.AMPLIFIER, 0.15);
    private static final Map<Role, Double> INRUSH_RATIO =
            Map.of(Role.PROCESSING, 15.0, Role.AUXILIARY, 6.0, Role.AMPLIFIER, 10.0);

    private final Sheet sheet;
    private final Header header;
    private final Mapping mapping;
    private final List<Item> items = new ArrayList<>();
    private final List<Notice> notices = new ArrayList<>();
    private final Map<Meaning, String> above = new EnumMap<>(Meaning.class);
    private boolean isCommaDecimal;
    private final Map<String, Integer> guessed = new LinkedHashMap<>();

    RowReader(Sheet sheet, Header header, Mapping mapping) {
        this.sheet = sheet;
        this.header = header;
        this.mapping = mapping;
    }

    void read() {
        notices.addAll(header.guesses());
        isCommaDecimal = sheet.rows().stream()
                .flatMap(row -> row.cells().stream())
                .anyMatch(cell -> cell.kind() == Cell.Kind.TEXT && Amount.showsDecimalComma(cell.text()));
        if (isCommaDecimal) {
            notices.add(Notice.guess("the decimal mark is a comma, as some cells can only be read so"));
        }
        sheet.rows().stream().filter(row -> row.number() > header.row()).forEach(this::row);
        guessed.forEach((what, rows) ->
                notices.add(Notice.guess((sheet.name().isEmpty() ? "" : "sheet '" + sheet.name() + "': ") + what + " ("
                        + rows + (rows == 1 ? " row)" : " rows)"))));
    }

    List<Item> items() {
        return items;
    }

    List<Notice> notices() {
        return notices;
    }

    private void row(Sheet.Row row) {
        int before = notices.size();
        String name = text(row, Meaning.NAME);
        boolean hasFigures = List.of(Meaning.WATTS, Meaning.VOLT_AMPS, Meaning.AMPS).stream()
                .anyMatch(meaning -> !cell(row, meaning).isEmpty());
        if (name.isEmpty() && !hasFigures && !cell(row, Meaning.QUANTITY).isEmpty()) {
            problem(row, Meaning.QUANTITY, "a quantity without a name. Maybe the name is in a merged cell above.");
            return;
        }
        if (name.isEmpty() && !hasFigures) {
            // A heading between rows may name the room of what follows; nothing else is lost with it.
            fillDown(row);
            return;
        }
        if (name.toLowerCase(Locale.ROOT)
                .matches("(sub[- ]?|grand )?(total|totals|sum|summe|zwischensumme|gesamt|somme|suma)\\b.*")) {
            notices.add(Notice.guess(sheet, row.number(), "'" + cut(name) + "' is taken for a sum and left out"));
            return;
        }
        if (name.endsWith(Template.EXAMPLE)) {
            notices.add(Notice.guess(sheet, row.number(), "an example of the template is left out"));
            return;
        }
        fillDown(row);
        if (name.isEmpty()) {
            problem(row, Meaning.NAME, "no name. Maybe it is in a merged cell above.");
        }
        OptionalDouble quantity = amount(row, Meaning.QUANTITY, "", 1);
        int pieces = 1;
        if (quantity.isPresent()) {
            double value = quantity.getAsDouble();
            if (value == 0) {
                notices.add(Notice.guess(sheet, row.number(), "'" + cut(name) + "' has quantity 0 and is left out"));
                return;
            }
            if (value != Math.rint(value) || value < 0 || value > MOST_PIECES) {
                problem(
                        row,
                        Meaning.QUANTITY,
                        "'" + cell(row, Meaning.QUANTITY).text() + "', expected a whole number from 1 to " + MOST_PIECES
                                + ".");
            } else {
                pieces = (int) value;
            }
        } else if (notices.size() == before) {
            guessed("a row without a quantity counts for one piece");
        }
        Role role = role(row, name);
        Optional<Integer> poles = poles(row);
        OptionalDouble factor = amount(row, Meaning.POWER_FACTOR, "", 1);
        double powerFactor = factor.orElse(POWER_FACTOR);
        if (powerFactor > 1
                && powerFactor <= 100
                && cell(row, Meaning.POWER_FACTOR).text().contains("%")) {
            powerFactor /= 100;
        }
        if (powerFactor <= 0 || powerFactor > 1) {
            problem(
                    row,
                    Meaning.POWER_FACTOR,
                    "'" + cell(row, Meaning.POWER_FACTOR).text() + "', expected more than 0, at most 1.");
        } else if (factor.isEmpty()) {
            guessed("power factor " + POWER_FACTOR + " where none is stated");
        }
        OptionalDouble amps = poles.isEmpty() ? OptionalDouble.empty() : amps(row, poles.get(), powerFactor);
        if (amps.isEmpty() && notices.stream().skip(before).noneMatch(Notice::isProblem)) {
            notices.add(Notice.problem(
                    sheet,
                    row.number(),
                    "'" + cut(name) + "' has neither watts, volt-amperes nor amperes. Maybe the "
                            + "column is headed otherwise: name it in a mapping file."));
        }
        double idle = amount(row, Meaning.IDLE, "a", 1).orElseGet(() -> {
            guessed(
                    "idle current where none is stated: 90 % of running for processing, 100 % auxiliary, 15 % amplifiers");
            return IDLE_RATIO.get(role) * amps.orElse(0);
        });
        double inrush = amount(row, Meaning.INRUSH, "a", 1).orElseGet(() -> {
            guessed(
                    "inrush peak where none is stated: √2 times 15 (processing), 6 (auxiliary), 10 (amplifiers) times running");
            return Math.sqrt(2) * INRUSH_RATIO.get(role) * amps.orElse(0);
        });
        if (idle < 0 || idle > 6300) {
            problem(row, Meaning.IDLE, "'" + cell(row, Meaning.IDLE).text() + "', expected 0 to 6300 A.");
        }
        if (inrush < 0 || inrush > 1e6) {
            problem(row, Meaning.INRUSH, "'" + cell(row, Meaning.INRUSH).text() + "', expected 0 to 1,000,000 A.");
        }
        if (notices.stream().skip(before).noneMatch(Notice::isProblem)) {
            items.add(new Item(
                    Notice.place(sheet, row.number()),
                    pieces,
                    cut(name),
                    room(),
                    role,
                    zone(row),
                    feed(row),
                    poles.orElseThrow(),
                    amps.orElseThrow(),
                    idle,
                    inrush,
                    powerFactor));
        }
    }

    /** A merged or omitted cell of these columns goes on from above. */
    private void fillDown(Sheet.Row row) {
        for (Meaning meaning : List.of(Meaning.ROOM, Meaning.RACK)) {
            String own = text(row, meaning);
            if (!own.isEmpty()) {
                above.put(meaning, own);
                if (meaning == Meaning.ROOM && text(row, Meaning.RACK).isEmpty()) {
                    above.remove(Meaning.RACK);
                }
            } else if (above.containsKey(meaning) && header.columns().containsKey(meaning)) {
                guessed("an empty " + meaning.name().toLowerCase(Locale.ROOT) + " goes on from the row above");
            }
        }
    }

    private String room() {
        String room = above.getOrDefault(Meaning.ROOM, "");
        String rack = above.getOrDefault(Meaning.RACK, "");
        return cut(room.isEmpty() || rack.isEmpty() ? room + rack : room + ", " + rack);
    }

    private String zone(Sheet.Row row) {
        String own = text(row, Meaning.ZONE);
        if (own.isEmpty()) {
            guessed("a row without a zone is in no shutdown group: it holds on an emergency");
        }
        return cut(own);
    }

    private String feed(Sheet.Row row) {
        String own = text(row, Meaning.FEED).toUpperCase(Locale.ROOT);
        if (own.matches("([A-Z]+ ?)?[AB]")) {
            return own.substring(own.length() - 1);
        }
        if (!own.isEmpty()) {
            guessed("feed '" + cut(own) + "' is neither A nor B: not redundant");
        }
        return "";
    }

    private Role role(Sheet.Row row, String name) {
        String stated = text(row, Meaning.ROLE);
        Optional<Role> byColumn = RoleWords.of(stated);
        if (byColumn.isPresent()) {
            return byColumn.get();
        }
        Optional<Role> byName = RoleWords.of(name);
        guessed(byName.map(role -> "role " + role.name().toLowerCase(Locale.ROOT) + " told by words of the name")
                .orElse("role auxiliary, for want of any word that tells"));
        return byName.orElse(Role.AUXILIARY);
    }

    /** By the voltage: to neutral one pole, between two lines two, three where the text says so. */
    private Optional<Integer> poles(Sheet.Row row) {
        double phase = mapping.lineToNeutralVolts();
        boolean isSplit = mapping.system() == PhaseSystem.SPLIT_PHASE;
        boolean isThree = mapping.system() == PhaseSystem.THREE_PHASE;
        double between = phase * (isSplit ? 2 : Math.sqrt(3));
        String text = text(row, Meaning.VOLTS).toLowerCase(Locale.ROOT).replaceAll("[\\s]", "");
        if (text.isEmpty()) {
            guessed("one pole where no voltage is stated");
            return Optional.of(1);
        }
        java.util.regex.Matcher range = java.util.regex.Pattern.compile("([0-9.]+)v?(?:-|–|/|to|bis)([0-9.]+)v?(ac)?")
                .matcher(text);
        if (range.matches()) {
            double low = Double.parseDouble(range.group(1));
            double high = Double.parseDouble(range.group(2));
            boolean isStar = near(low, phase) && near(high, phase * Math.sqrt(3)) && text.contains("/") && isThree;
            if (!isStar && low <= 1.1 * phase && high >= 0.9 * phase) {
                guessed("a range of voltages that holds the one to neutral counts for one pole");
                return Optional.of(1);
            }
            if (isStar) {
                return Optional.of(3);
            }
        }
        boolean saysThree = text.matches(".*(3~|3ph|3phase|3p|3/n).*");
        OptionalDouble volts = saysThree
                ? number(text.replaceAll("(3~|3ph(ase)?|3p|3/n).*", "").replaceAll("/.*", ""))
                : amount(row, Meaning.VOLTS, "v", 1);
        if (saysThree && isThree) {
            return Optional.of(3);
        }
        if (volts.isEmpty()) {
            return Optional.empty();
        }
        double value = volts.getAsDouble();
        if (near(value, phase)
                || value >= 100 && value <= 127 && phase <= 127
                || value >= 220 && value <= 240 && phase >= 220) {
            return Optional.of(1);
        }
        if (mapping.system() != PhaseSystem.SINGLE_PHASE
                && (near(value, between) || phase <= 127 && value >= 200 && value <= 240)) {
            return Optional.of(isThree && phase > 200 ? 3 : 2);
        }
        problem(
                row,
                Meaning.VOLTS,
                String.format(
                        Locale.ROOT,
                        "'%s', the supply has %.0f V to neutral and %.0f V between lines.",
                        cell(row, Meaning.VOLTS).text(),
                        phase,
                        between));
        return Optional.empty();
    }

    private static boolean near(double value, double nominal) {
        return Math.abs(value - nominal) <= 0.1 * nominal;
    }

    private static OptionalDouble number(String text) {
        return Amount.of(text).map(found -> OptionalDouble.of(found.value())).orElse(OptionalDouble.empty());
    }

    /** Line current of one piece, from ampere where stated, else from volt-amperes or watts. */
    private OptionalDouble amps(Sheet.Row row, int poles, double powerFactor) {
        double perAmp = LinePower.voltAmpsPerAmp(mapping.system(), poles, mapping.lineToNeutralVolts());
        OptionalDouble amps = amount(row, Meaning.AMPS, "a", 1);
        OptionalDouble voltAmps = amount(row, Meaning.VOLT_AMPS, "va", 1);
        OptionalDouble watts = amount(row, Meaning.WATTS, "w", 1);
        OptionalDouble found = amps;
        Meaning from = Meaning.AMPS;
        if (found.isEmpty() && voltAmps.isPresent()) {
            found = OptionalDouble.of(voltAmps.getAsDouble() / perAmp);
            from = Meaning.VOLT_AMPS;
        } else if (found.isEmpty() && watts.isPresent()) {
            found = OptionalDouble.of(watts.getAsDouble() / perAmp / powerFactor);
            from = Meaning.WATTS;
        }
        if (found.isPresent() && (found.getAsDouble() <= 0 || found.getAsDouble() > 6300)) {
            problem(
                    row,
                    from,
                    String.format(
                            Locale.ROOT,
                            "'%s' makes %.3f A a piece, expected more than 0, at most 6300 A.",
                            cell(row, from).text(),
                            found.getAsDouble()));
            return OptionalDouble.empty();
        }
        return found;
    }

    /** Empty where the cell is empty, or is a problem that is noted. */
    private OptionalDouble amount(Sheet.Row row, Meaning meaning, String unit, double factor) {
        Cell cell = cell(row, meaning);
        if (cell.isEmpty() || cell.text().matches("[-–—]+|n/?a|N/?A|\\?")) {
            return OptionalDouble.empty();
        }
        switch (cell.kind()) {
            case DATE ->
                problem(row, meaning, "'" + cell.text() + "' is a date. Maybe the sheet has turned a number into one.");
            case ERROR -> problem(row, meaning, "the formula ends in '" + cell.text() + "'.");
            case FORMULA ->
                problem(
                        row,
                        meaning,
                        "a formula whose value is not in the file. Maybe open and save it in a spreadsheet program.");
            default -> {
                Optional<Amount> amount = Amount.of(cell.text(), isCommaDecimal && cell.kind() == Cell.Kind.TEXT);
                if (amount.isEmpty()) {
                    problem(row, meaning, "'" + cut(cell.text()) + "' is no number with at most one unit.");
                    return OptionalDouble.empty();
                }
                String stated = amount.get().unit().isEmpty()
                        ? header.units().getOrDefault(meaning, unit)
                        : amount.get().unit();
                Optional<Double> scale = scale(stated, unit);
                if (scale.isEmpty()) {
                    problem(
                            row,
                            meaning,
                            "'" + cut(cell.text()) + "' is in '" + stated + "', expected "
                                    + (unit.isEmpty() ? "no unit" : unit.toUpperCase(Locale.ROOT)) + ".");
                    return OptionalDouble.empty();
                }
                return OptionalDouble.of(factor * scale.get() * amount.get().value());
            }
        }
        return OptionalDouble.empty();
    }

    private static Optional<Double> scale(String stated, String wanted) {
        if (wanted.isEmpty()) {
            return stated.isEmpty() || stated.matches("x|pcs?|st|stk|%|pieces?") ? Optional.of(1.0) : Optional.empty();
        }
        String bare = stated.replaceAll("(ac|rms|eff)$", "");
        if (bare.equals(wanted)
                || wanted.equals("a") && bare.matches("amps?|ampere|apk|apeak")
                || wanted.equals("w") && bare.matches("watts?")
                || wanted.equals("v") && bare.matches("volts?")) {
            return Optional.of(1.0);
        }
        if (bare.equals("k" + wanted)) {
            return Optional.of(1000.0);
        }
        return bare.equals("m" + wanted) ? Optional.of(0.001) : Optional.empty();
    }

    private void problem(Sheet.Row row, Meaning meaning, String text) {
        Integer column = header.columns().get(meaning);
        notices.add(
                column == null
                        ? Notice.problem(sheet, row.number(), text)
                        : Notice.problem(sheet, row.number(), column, text));
    }

    private void guessed(String what) {
        guessed.merge(what, 1, Integer::sum);
    }

    private Cell cell(Sheet.Row row, Meaning meaning) {
        Integer column = header.columns().get(meaning);
        return column == null ? Cell.EMPTY : row.cell(column);
    }

    private String text(Sheet.Row row, Meaning meaning) {
        return cell(row, meaning).text();
    }

    private static String cut(String text) {
        return text.length() <= LONGEST_NAME ? text : text.substring(0, LONGEST_NAME - 1) + "…";
    }
}
