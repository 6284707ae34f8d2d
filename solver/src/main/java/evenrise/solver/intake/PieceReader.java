package evenrise.solver.intake;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Harmless;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Role;
import evenrise.solver.table.Cell;
import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/** Reads one row into the pieces of equipment that it stands for, or into problems with their places. */
final class PieceReader {

    /** Where a list says that a piece lives on its network. */
    private static final List<Meaning> ON_NETWORK =
            List.of(Meaning.VOLTS, Meaning.FEED, Meaning.FED_FROM, Meaning.WATTS, Meaning.VOLT_AMPS, Meaning.AMPS);

    private static final int LONGEST_TAG = 60;
    private static final int LONGEST_NOTES = 2000;

    private final ReadTable sheet;
    private final Notices notices;
    private final CellReader cells;
    private final Whereabouts whereabouts;
    private final ServiceReader services;
    private final CurrentReader currents;
    private final TiesReader ties;
    private final CircuitReader circuits;
    private final BreakerPolesReader breakerPoles;
    private final QuantityReader quantities;
    private final DirectCurrent directs;
    private final Supplies supplies;

    PieceReader(
            ReadTable sheet,
            Header header,
            Mapping mapping,
            Notices notices,
            CellReader cells,
            Whereabouts whereabouts) {
        this.sheet = sheet;
        this.notices = notices;
        this.cells = cells;
        this.whereabouts = whereabouts;
        this.services = new ServiceReader(sheet, cells, notices, mapping.placesLifeSafety());
        this.currents = new CurrentReader(cells, mapping, notices);
        this.ties = new TiesReader(cells, mapping);
        this.circuits = new CircuitReader(cells, notices);
        this.breakerPoles = new BreakerPolesReader(cells, header, mapping, notices);
        this.quantities = new QuantityReader(cells, mapping.aboutPercent(), notices);
        this.directs = new DirectCurrent(cells, mapping);
        this.supplies = new Supplies(cells, notices);
    }

    /**
     * Items of one row.
     *
     * @param pieces that the row stands for
     * @param items none where nothing of it is fed from here, or something is a problem, which is noted
     */
    record Read(int pieces, List<Item> items) {}

    Read of(ReadTable.Row row, String name) {
        int before = notices.problems();
        if (name.isEmpty()) {
            cells.problem(row, Meaning.NAME, "no name. Maybe it is in a merged cell above.");
        }
        QuantityReader.Count count = quantities.of(row);
        List<Item> items = items(row, name, count, before);
        if (items.isEmpty()) {
            notices.leaveOut(count.pieces());
        }
        return new Read(count.pieces(), items);
    }

    private List<Item> items(ReadTable.Row row, String name, QuantityReader.Count count, int before) {
        int pieces = count.pieces();
        if (pieces == 0) {
            cells.leaveOut(row, "'" + CellReader.cut(name) + "' has quantity 0 and is left out");
            return List.of();
        }
        Optional<Service> service = services.of(row, name, pieces);
        if (service.filter(it -> it == Service.LIFE_SAFETY).isPresent()) {
            return List.of();
        }
        if (ON_NETWORK.stream()
                .anyMatch(
                        meaning -> HeaderWords.folded(cells.text(row, meaning)).matches(".*\\bpoe\\b.*"))) {
            cells.leaveOut(
                    row,
                    "'" + CellReader.cut(name)
                            + "' lives on its network (PoE) and is left out: its power is its switch's");
            return List.of();
        }
        Set<String> guessed = new TreeSet<>(Set.of("inrush_half_ms", "third_harmonic"));
        boolean isDirect = directs.is(row);
        if (isDirect) {
            service = service.map(it -> it.isSwitched() ? Service.ASKED : it);
        }
        service.filter(it -> it == Service.ASKED).ifPresent(it -> guessed.add("switched"));
        Role role = role(row, name, guessed);
        Gear gear = isDirect
                ? Gear.ELECTRONICS
                : currents.shafts().isStated(row)
                        ? Gear.MOTOR
                        : Gear.of(role, cells.text(row, Meaning.ROLE) + " " + name);
        ListedCircuit circuit = circuits.of(row);
        BreakerPoles poles = isDirect ? BreakerPoles.of(1) : breakerPoles.of(row, circuit.breaker(), guessed);
        OptionalDouble outlet = outlet(row);
        OptionalDouble rating = circuit.breaker()
                .map(breaker -> OptionalDouble.of(
                        poles.breakers() * breaker.amps() / circuit.names().piecesOnEach(pieces, poles.poles())))
                .orElse(outlet);
        CurrentReader.Current current = (isDirect
                        ? directs.of(row, name, pieces, gear, guessed)
                        : Optional.<CurrentReader.Current>empty())
                .orElseGet(() -> currents.of(
                        row,
                        name,
                        gear,
                        poles.loadedPoles(),
                        rating,
                        circuit.breaker().isPresent(),
                        guessed,
                        before));
        Ties tied =
                ties.of(row, whereabouts, service.filter(Service::isSwitched).isPresent());
        if (role == Role.PROCESSING) {
            guessed.add("settle_s");
        }
        if (notices.problems() > before) {
            return List.of();
        }
        Label label = new Label(label(row, Meaning.TAG, LONGEST_TAG), label(row, Meaning.NOTES, LONGEST_NOTES));
        Item whole = new Item(
                Notice.place(sheet, row.number()),
                pieces,
                CellReader.cut(name),
                whereabouts.room(),
                role,
                whereabouts.zone(row),
                whereabouts.feed(row),
                gear,
                service.orElseThrow(),
                outlet,
                poles.poles(),
                current.amps().orElseThrow(),
                current.idleAmps(),
                current.inrushPeakAmps(),
                current.powerFactor(),
                current.horsepower(),
                Set.copyOf(guessed),
                service.get() == Service.LIFE_SAFETY_HERE ? services.clauses(row, name) : "",
                tied,
                isDirect ? label.noted("lives on direct current, behind a supply that the list does not name") : label,
                circuit,
                count.open(),
                false);
        return supplies.of(row, whole, poles.breakers());
    }

    private String label(ReadTable.Row row, Meaning meaning, int longest) {
        return CellReader.isSilent(cells.cell(row, meaning)) ? "" : Harmless.cut(cells.text(row, meaning), longest);
    }

    private Role role(ReadTable.Row row, String name, Set<String> guessed) {
        Optional<Role> byColumn = RoleWords.of(cells.text(row, Meaning.ROLE));
        if (byColumn.isPresent()) {
            cells.read(row, Meaning.ROLE, word(byColumn.get()), ReadValue.How.STATED);
            return byColumn.get();
        }
        guessed.add("role");
        Optional<Role> byName = RoleWords.of(name);
        cells.readByName(row, Meaning.ROLE, word(byName.orElse(Role.AUXILIARY)), ReadValue.How.GUESSED);
        notices.assume(byName.map(role -> "role " + word(role) + " told by words of the name")
                .orElse("role auxiliary, for want of any word that tells"));
        return byName.orElse(Role.AUXILIARY);
    }

    private static String word(Role role) {
        return role.name().toLowerCase(Locale.ROOT);
    }

    private OptionalDouble outlet(ReadTable.Row row) {
        Cell cell = cells.cell(row, Meaning.OUTLET);
        if (CellReader.isSilent(cell) || !cells.isReadable(row, Meaning.OUTLET)) {
            return OptionalDouble.empty();
        }
        OptionalDouble rating = Outlet.amps(cell.text());
        cells.read(
                row,
                Meaning.OUTLET,
                rating.isPresent() ? Decimals.toThousandths(rating.getAsDouble()) + " A" : "tells no rating",
                rating.isPresent() ? ReadValue.How.STATED : ReadValue.How.GUESSED);
        if (rating.isEmpty()) {
            notices.assume("outlet '" + CellReader.cut(cell.text()) + "' tells no rating");
        }
        return rating;
    }
}
