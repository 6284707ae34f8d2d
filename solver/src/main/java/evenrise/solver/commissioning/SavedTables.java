package evenrise.solver.commissioning;

import evenrise.model.readings.SavedDevice;
import evenrise.model.readings.SavedMeter;
import evenrise.model.readings.SavedPhase;
import evenrise.model.readings.SavedPlace;
import evenrise.model.readings.SavedPole;
import evenrise.model.readings.SavedReadings;
import evenrise.solver.table.Cell;
import evenrise.solver.table.ReadTable;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/** Readings that a page saved, as the tables that the same sheets would be: what holds of one holds of both. */
public final class SavedTables {
    // No list begins with a name: a first cell that begins like a remark would make a remark of its row.
    private static final List<String> POLES = List.of(
            "phase",
            "load",
            "idle measured, A",
            "running measured, A",
            "peak measured, A",
            "on measured, s",
            "off measured, s",
            "pass or fail",
            "remark",
            "date",
            "meter");

    private static final List<String> PLACES = List.of(
            "phase rotation", "place", "neutral measured, A", "insulation, MΩ", "pass or fail", "date", "meter");

    private static final List<String> OF_A_PHASE = List.of(
            "measured %s to neutral, V", "idle measured %s, A", "running measured %s, A", "peak measured %s, A");

    private static final List<String> DEVICES = List.of(
            "pass or fail",
            "place",
            "protects",
            "rated, mA",
            "leakage measured, mA",
            "tripped at, mA",
            "tripped after, ms");

    private static final List<String> METERS = List.of(
            "range, A",
            "meter",
            "make type serial number",
            "calibrated until",
            "off by, % of range",
            "off by, % of reading",
            "off by, s");

    private SavedTables() {}

    /** One for each list of the file; always that of poles, by which it is known as sheets of ours. */
    public static List<ReadTable> of(SavedReadings saved) {
        List<ReadTable> tables = new ArrayList<>();
        tables.add(table("poles", POLES, saved.poles(), SavedTables::pole));
        if (!saved.places().isEmpty()) {
            tables.add(table("places", places(saved.places()), saved.places(), each -> place(each, saved.places())));
        }
        if (!saved.devices().isEmpty()) {
            tables.add(table("devices", DEVICES, saved.devices(), SavedTables::device));
        }
        if (!saved.meters().isEmpty()) {
            tables.add(table("meters", METERS, saved.meters(), SavedTables::meter));
        }
        return tables;
    }

    private static <T> ReadTable table(
            String name, List<String> headers, List<T> entries, Function<T, List<Cell>> cells) {
        List<ReadTable.Row> rows = new ArrayList<>();
        rows.add(new ReadTable.Row(0, headers.stream().map(Cell::text).toList()));
        for (int i = 0; i < entries.size(); i++) {
            rows.add(new ReadTable.Row(i + 1, cells.apply(entries.get(i))));
        }
        return new ReadTable(name, rows);
    }

    private static List<Cell> pole(SavedPole pole) {
        return List.of(
                words(pole.phase().map(Enum::name)),
                name(pole.load()),
                number(pole.idleAmps()),
                number(pole.runningAmps()),
                number(pole.peakAmps()),
                number(pole.onSeconds()),
                number(pole.offSeconds()),
                verdict(pole.passed()),
                words(pole.remark()),
                words(pole.date()),
                words(pole.meter()));
    }

    private static List<String> phases(List<SavedPlace> places) {
        return places.stream()
                .flatMap(place -> place.phases().stream())
                .map(each -> each.phase().name())
                .distinct()
                .sorted()
                .toList();
    }

    private static List<String> places(List<SavedPlace> places) {
        return Stream.concat(
                        PLACES.stream(),
                        phases(places).stream()
                                .flatMap(phase -> OF_A_PHASE.stream().map(header -> header.replace("%s", phase))))
                .toList();
    }

    private static List<Cell> place(SavedPlace place, List<SavedPlace> all) {
        List<Cell> cells = new ArrayList<>(List.of(
                verdict(place.rotationRight()),
                name(place.place()),
                number(place.neutralAmps()),
                number(place.insulationMegohm()),
                verdict(place.passed()),
                words(place.date()),
                words(place.meter())));
        for (String phase : phases(all)) {
            Optional<SavedPhase> own = place.phases().stream()
                    .filter(each -> each.phase().name().equals(phase))
                    .findFirst();
            cells.add(number(own.map(SavedPhase::toNeutralVolts).orElse(OptionalDouble.empty())));
            cells.add(number(own.map(SavedPhase::idleAmps).orElse(OptionalDouble.empty())));
            cells.add(number(own.map(SavedPhase::runningAmps).orElse(OptionalDouble.empty())));
            cells.add(number(own.map(SavedPhase::peakAmps).orElse(OptionalDouble.empty())));
        }
        return cells;
    }

    private static List<Cell> device(SavedDevice device) {
        return List.of(
                verdict(device.passed()),
                name(device.place()),
                name(device.protects()),
                number(device.ratedMa()),
                number(device.leakageMa()),
                number(device.trippedAtMa()),
                number(device.trippedAfterMillis()));
    }

    private static List<Cell> meter(SavedMeter meter) {
        return List.of(
                number(meter.rangeAmps()),
                name(meter.meter()),
                words(meter.what()),
                words(meter.calibratedUntil()),
                number(meter.ofRangePercent()),
                number(meter.ofReadingPercent()),
                number(meter.offBySeconds()));
    }

    /** Letter by letter, as the project has it. */
    private static Cell name(String id) {
        return new Cell(id, Cell.Kind.TEXT);
    }

    private static Cell words(Optional<String> words) {
        return Cell.text(words.orElse(""));
    }

    private static Cell verdict(Optional<Boolean> passed) {
        return Cell.text(passed.map(each -> each ? "pass" : "fail").orElse(""));
    }

    private static Cell number(OptionalDouble value) {
        return value.isEmpty()
                ? Cell.EMPTY
                : new Cell(BigDecimal.valueOf(value.getAsDouble()).toPlainString(), Cell.Kind.NUMBER);
    }
}
