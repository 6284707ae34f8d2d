package evenrise.solver.intake;

import evenrise.model.electrical.LinePower;
import evenrise.model.electrical.motor.FullLoadCurrent;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Practice;
import evenrise.model.project.Role;
import evenrise.solver.table.Cell;
import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/** Reads the rows below a header, each into pieces of equipment or into problems with their places. */
final class RowReader {
    private static final int MOST_PIECES = 10_000;

    /** Below it no piece draws anything that counts, and ratios of its figures say nothing. */
    private static final double LEAST_AMPS = 0.001;

    private static final double LEAST_POWER_FACTOR = 0.01;

    private final ReadTable sheet;
    private final Header header;
    private final Mapping mapping;
    private final Notices notices;
    private final CellReader figures;
    private final ServiceReader services;
    private final List<Item> items = new ArrayList<>();
    private final Map<Meaning, String> above = new EnumMap<>(Meaning.class);

    RowReader(ReadTable sheet, Header header, Mapping mapping, Notices notices) {
        this.sheet = sheet;
        this.header = header;
        this.mapping = mapping;
        this.notices = notices;
        header.notices().forEach(notices::add);
        this.figures = new CellReader(sheet, header, notices);
        this.services = new ServiceReader(sheet, figures, notices, mapping.placesLifeSafety());
    }

    List<Item> read() {
        sheet.rows().stream().filter(row -> row.number() > header.row()).forEach(this::row);
        notices.sumUp(sheet);
        return items;
    }

    private void row(ReadTable.Row row) {
        String name = figures.text(row, Meaning.NAME);
        boolean hasFigures = List.of(Meaning.WATTS, Meaning.VOLT_AMPS, Meaning.AMPS).stream()
                .anyMatch(meaning -> !figures.cell(row, meaning).isEmpty());
        if (name.isEmpty()
                && !hasFigures
                && !figures.cell(row, Meaning.QUANTITY).isEmpty()) {
            figures.problem(
                    row, Meaning.QUANTITY, "a quantity without a name. Maybe the name is in a merged cell above.");
        } else if (name.isEmpty() && !hasFigures) {
            // A heading between rows may name the room of what follows; nothing else is lost with it.
            fillDown(row);
        } else if (name.toLowerCase(Locale.ROOT)
                .matches("(sub[- ]?|grand )?(total|totals|sum|summe|zwischensumme|gesamt|somme|suma)\\b.*")) {
            leaveOut(row, "'" + CellReader.cut(name) + "' is taken for a sum and left out");
        } else if (name.endsWith(Template.EXAMPLE)) {
            leaveOut(row, "an example of the template is left out");
        } else {
            fillDown(row);
            pieces(row, name);
        }
    }

    private void leaveOut(ReadTable.Row row, String why) {
        notices.add(Notice.guess(sheet, row.number(), why));
    }

    private void pieces(ReadTable.Row row, String name) {
        int before = notices.problems();
        if (name.isEmpty()) {
            figures.problem(row, Meaning.NAME, "no name. Maybe it is in a merged cell above.");
        }
        int pieces = quantity(row);
        if (pieces == 0) {
            leaveOut(row, "'" + CellReader.cut(name) + "' has quantity 0 and is left out");
            return;
        }
        Optional<Service> service = services.of(row, name, pieces);
        if (service.filter(it -> it == Service.LIFE_SAFETY).isPresent()) {
            return;
        }
        if (HeaderWords.folded(figures.text(row, Meaning.VOLTS)).matches(".*\\bpoe\\b.*")) {
            leaveOut(
                    row,
                    "'" + CellReader.cut(name)
                            + "' lives on its network (PoE) and is left out: its power is its switch's");
            return;
        }
        Set<String> guessed = new TreeSet<>(Set.of("breaker_a", "inrush_half_ms", "third_harmonic"));
        service.filter(it -> it == Service.ASKED).ifPresent(it -> guessed.add("switched"));
        Role role = role(row, name, guessed);
        Gear gear = Gear.of(role, figures.text(row, Meaning.ROLE) + " " + name);
        int poles = poles(row, guessed);
        double powerFactor = powerFactor(row, gear, guessed);
        OptionalDouble horsepower =
                gear == Gear.MOTOR ? figures.horsepower(row, Meaning.WATTS) : OptionalDouble.empty();
        OptionalDouble amps = poles == 0 || powerFactor == 0
                ? OptionalDouble.empty()
                : horsepower.isPresent()
                                && figures.amount(row, Meaning.AMPS, "a").isEmpty()
                        ? motorAmps(row, poles, horsepower.getAsDouble())
                        : amps(row, poles, powerFactor, horsepower.isPresent());
        if (amps.isEmpty() && notices.problems() == before) {
            notices.add(Notice.problem(
                    sheet,
                    row.number(),
                    "'" + CellReader.cut(name) + "' has neither watts, volt-amperes nor amperes. Maybe the "
                            + "column is headed otherwise: name it in a mapping file."));
        }
        double idle = figure(row, Meaning.IDLE, "idle_a", 6300, guessed)
                .orElse(gear.usual().idleRatio() * amps.orElse(0));
        double inrush = figure(row, Meaning.INRUSH, "inrush_peak_a", 1e6, guessed)
                .orElse(gear.usual().inrushPeakAmps(amps.orElse(0)));
        OptionalDouble outlet = outlet(row);
        if (role == Role.PROCESSING) {
            guessed.add("settle_s");
        }
        if (notices.problems() == before) {
            items.add(new Item(
                    Notice.place(sheet, row.number()),
                    pieces,
                    CellReader.cut(name),
                    room(),
                    role,
                    zone(row),
                    feed(row),
                    gear,
                    service.orElseThrow(),
                    outlet,
                    poles,
                    amps.orElseThrow(),
                    idle,
                    inrush,
                    powerFactor,
                    horsepower,
                    Set.copyOf(guessed),
                    service.get() == Service.LIFE_SAFETY_HERE ? services.clauses(row, name) : ""));
        }
    }

    private int quantity(ReadTable.Row row) {
        OptionalDouble quantity = figures.amount(row, Meaning.QUANTITY, "");
        if (quantity.isEmpty()) {
            if (CellReader.isSilent(figures.cell(row, Meaning.QUANTITY))) {
                notices.assume("a row without a quantity counts for one piece");
            }
            return 1;
        }
        double value = quantity.getAsDouble();
        if (value != Math.rint(value) || value < 0 || value > MOST_PIECES) {
            figures.problem(
                    row,
                    Meaning.QUANTITY,
                    "'" + CellReader.cut(figures.text(row, Meaning.QUANTITY)) + "', expected a whole number from 1 to "
                            + MOST_PIECES + ".");
            return 1;
        }
        return (int) value;
    }

    /** A merged or omitted cell of these columns goes on from above. */
    private void fillDown(ReadTable.Row row) {
        for (Meaning meaning : List.of(Meaning.ROOM, Meaning.RACK)) {
            String own = figures.text(row, meaning);
            if (!own.isEmpty()) {
                above.put(meaning, own);
                if (meaning == Meaning.ROOM && figures.text(row, Meaning.RACK).isEmpty()) {
                    above.remove(Meaning.RACK);
                }
            } else if (above.containsKey(meaning) && header.columns().containsKey(meaning)) {
                notices.assume("an empty " + meaning.word() + " goes on from the row above");
            }
        }
    }

    private String room() {
        String room = above.getOrDefault(Meaning.ROOM, "");
        String rack = above.getOrDefault(Meaning.RACK, "");
        return CellReader.cut(room.isEmpty() || rack.isEmpty() ? room + rack : room + ", " + rack);
    }

    private String zone(ReadTable.Row row) {
        String own = figures.text(row, Meaning.ZONE);
        if (own.isEmpty()) {
            notices.assume("a row without a zone is in no shutdown group: it holds on an emergency");
        }
        return CellReader.cut(own);
    }

    private String feed(ReadTable.Row row) {
        String own = figures.text(row, Meaning.FEED).toUpperCase(Locale.ROOT);
        if (own.matches("([A-Z]+ ?)?[AB]")) {
            return own.substring(own.length() - 1);
        }
        if (!own.isEmpty()) {
            notices.assume("feed '" + CellReader.cut(own) + "' is neither A nor B: not redundant");
        }
        return "";
    }

    private Role role(ReadTable.Row row, String name, Set<String> guessed) {
        Optional<Role> byColumn = RoleWords.of(figures.text(row, Meaning.ROLE));
        if (byColumn.isPresent()) {
            return byColumn.get();
        }
        guessed.add("role");
        Optional<Role> byName = RoleWords.of(name);
        notices.assume(byName.map(role -> "role " + role.name().toLowerCase(Locale.ROOT) + " told by words of the name")
                .orElse("role auxiliary, for want of any word that tells"));
        return byName.orElse(Role.AUXILIARY);
    }

    /** 0 where the voltage is a problem, which is noted. */
    private int poles(ReadTable.Row row, Set<String> guessed) {
        if (!figures.isReadable(row, Meaning.VOLTS)) {
            return 0;
        }
        Connection connection = Connection.of(
                figures.text(row, Meaning.VOLTS),
                header.units().getOrDefault(Meaning.VOLTS, "v"),
                mapping.system(),
                mapping.lineToNeutralVolts());
        if (connection.poles() == 0) {
            figures.problem(row, Meaning.VOLTS, connection.problem());
        }
        if (!connection.assumed().isEmpty()) {
            notices.assume(connection.assumed());
            guessed.add("poles");
        }
        if (!connection.question().isEmpty()) {
            notices.add(new Notice(Notice.Kind.QUESTION, Notice.place(sheet, row.number()), connection.question()));
        }
        return connection.poles();
    }

    /** 0 where it is a problem, which is noted. */
    private double powerFactor(ReadTable.Row row, Gear gear, Set<String> guessed) {
        int before = notices.problems();
        OptionalDouble stated = figures.amount(row, Meaning.POWER_FACTOR, "");
        if (stated.isEmpty()) {
            guessed.add("power_factor");
            notices.assume("no power factor is stated: what is usual for its kind of gear");
            return notices.problems() == before ? gear.usual().powerFactor() : 0;
        }
        String text = figures.text(row, Meaning.POWER_FACTOR);
        double factor = stated.getAsDouble();
        factor = factor > 1 && text.contains("%") ? factor / 100 : factor;
        if (!(factor >= LEAST_POWER_FACTOR && factor <= 1)) {
            figures.problem(
                    row, Meaning.POWER_FACTOR, "'" + CellReader.cut(text) + "', expected at least 0.01, at most 1.");
            return 0;
        }
        return factor;
    }

    /** Empty where it is not stated, or a problem that is noted. */
    private OptionalDouble figure(ReadTable.Row row, Meaning meaning, String key, double most, Set<String> guessed) {
        OptionalDouble stated = figures.amount(row, meaning, "a");
        if (stated.isEmpty()) {
            guessed.add(key);
            notices.assume("no " + meaning.word() + " current is stated: what is usual for its kind of gear");
        } else if (stated.getAsDouble() < 0 || stated.getAsDouble() > most) {
            figures.problem(
                    row,
                    meaning,
                    String.format(
                            Locale.ROOT,
                            "'%s', expected 0 to %,.0f A.",
                            CellReader.cut(figures.text(row, meaning)),
                            most));
        }
        return stated;
    }

    private OptionalDouble outlet(ReadTable.Row row) {
        Cell cell = figures.cell(row, Meaning.OUTLET);
        if (CellReader.isSilent(cell) || !figures.isReadable(row, Meaning.OUTLET)) {
            return OptionalDouble.empty();
        }
        OptionalDouble rating = Outlet.amps(cell.text());
        if (rating.isEmpty()) {
            notices.assume("outlet '" + CellReader.cut(cell.text()) + "' tells no rating");
        }
        return rating;
    }

    /** Full-load current by the tables of NEC 430.6(A)(1), or a problem that is noted. */
    private OptionalDouble motorAmps(ReadTable.Row row, int poles, double horsepower) {
        double phase = mapping.lineToNeutralVolts();
        double volts = LinePower.voltAmpsPerAmp(mapping.system(), Math.min(poles, 2), phase);
        OptionalDouble found = OptionalDouble.empty();
        if (mapping.practiceOfRatings() == Practice.NEC) {
            found = poles == 3
                    ? FullLoadCurrent.threePhaseAmps(horsepower, volts)
                    : FullLoadCurrent.singlePhaseAmps(horsepower, volts);
        }
        if (found.isPresent()) {
            notices.assume("a motor's full-load current is that of NEC tables 430.248 and 430.250 for its horsepower");
        } else {
            figures.problem(
                    row,
                    Meaning.WATTS,
                    String.format(
                            Locale.ROOT,
                            "'%s': no table has the full-load current of that at %.0f V. Maybe state it in ampere, by"
                                    + " the nameplate.",
                            CellReader.cut(figures.text(row, Meaning.WATTS)),
                            volts));
        }
        return found;
    }

    /** Line current of one piece, from ampere where stated, else from volt-amperes or watts. */
    private OptionalDouble amps(ReadTable.Row row, int poles, double powerFactor, boolean isShaftPower) {
        double perAmp = LinePower.voltAmpsPerAmp(mapping.system(), poles, mapping.lineToNeutralVolts());
        OptionalDouble amps = figures.amount(row, Meaning.AMPS, "a");
        OptionalDouble voltAmps = figures.amount(row, Meaning.VOLT_AMPS, "va");
        OptionalDouble watts = isShaftPower ? OptionalDouble.empty() : figures.amount(row, Meaning.WATTS, "w");
        OptionalDouble found = amps;
        Meaning from = Meaning.AMPS;
        if (found.isEmpty() && voltAmps.isPresent()) {
            found = OptionalDouble.of(voltAmps.getAsDouble() / perAmp);
            from = Meaning.VOLT_AMPS;
        } else if (found.isEmpty() && watts.isPresent()) {
            found = OptionalDouble.of(watts.getAsDouble() / perAmp / powerFactor);
            from = Meaning.WATTS;
        }
        if (found.isPresent() && !(found.getAsDouble() >= LEAST_AMPS && found.getAsDouble() <= 6300)) {
            figures.problem(
                    row,
                    from,
                    String.format(
                            Locale.ROOT,
                            "'%s' makes %s A a piece, expected at least 0.001, at most 6300 A.",
                            CellReader.cut(figures.text(row, from)),
                            found.getAsDouble()));
            return OptionalDouble.empty();
        }
        return found;
    }
}
