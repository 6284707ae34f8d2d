package evenrise.solver.commissioning;

import evenrise.model.check.Nearest;
import evenrise.model.contract.Phrase;
import evenrise.model.measured.PlaceReading;
import evenrise.model.measured.SiteReadings;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/** A row a panel, a node or the supply. */
final class FilledPlaces {
    private static final double MOST_AMPS = 100_000;
    private static final double MOST_VOLTS = 1000;
    private static final double MOST_MEGOHMS = 1e6;

    private final FilledSheet sheet;
    private final FilledCells cells;
    private final Layout layout;
    private final Visits visits;
    private final List<String> problems;
    private final List<String> notes;

    FilledPlaces(
            FilledSheet sheet,
            FilledCells cells,
            Layout layout,
            Visits visits,
            List<String> problems,
            List<String> notes) {
        this.sheet = sheet;
        this.cells = cells;
        this.layout = layout;
        this.visits = visits;
        this.problems = problems;
        this.notes = notes;
    }

    SiteReadings read() {
        List<PlaceReading> read = new ArrayList<>();
        for (ReadTable.Row row : sheet.rows()) {
            row(row).ifPresent(read::add);
        }
        TreeSet<String> known = new TreeSet<>();
        sheet.columns().keySet().stream()
                .filter(each -> each.matches(
                        "panel|place|nominal|voltage.*|.*planned.*|.*measured.*|(idle|running|peak)( [abc])? a|neutral.*|(phase )?rotation|torque|result|insulation.*|lugs"
                                + " torqued.*|pass or fail|date|meter|instrument|initials"))
                .forEach(known::add);
        FilledSheets.unread(sheet, known, notes);
        return new SiteReadings(List.of(), read, List.of());
    }

    private Optional<PlaceReading> row(ReadTable.Row row) {
        String at = sheet.at(row);
        String id = sheet.text(row, "panel", "place");
        Map<Phase, Double> volts = byPhase(row, "measured %s to neutral v", "v", MOST_VOLTS, id);
        Map<Phase, Double> idle = byPhase(row, "idle measured %s a", "a", MOST_AMPS, id);
        Map<Phase, Double> running = byPhase(row, "running measured %s a", "a", MOST_AMPS, id);
        Map<Phase, Double> peak = byPhase(row, "peak measured %s a", "a", MOST_AMPS, id);
        OptionalDouble neutral = amount(row, "neutral measured a", "a", MOST_AMPS, id);
        Optional<Boolean> rotation = cells.yes(
                FilledSheet.cell(row, sheet.column("phase rotation", "rotation")),
                at,
                "phase rotation of " + Phrase.quoted(id));
        OptionalDouble insulation = amount(row, "insulation mω", "mω", MOST_MEGOHMS, id);
        Optional<Boolean> passed = cells.yes(
                FilledSheet.cell(row, sheet.column("pass or fail", "result")),
                at,
                "pass or fail of " + Phrase.quoted(id));
        boolean isBlank = volts.isEmpty()
                && idle.isEmpty()
                && running.isEmpty()
                && peak.isEmpty()
                && neutral.isEmpty()
                && rotation.isEmpty()
                && insulation.isEmpty()
                && passed.isEmpty();
        if (isBlank) {
            return Optional.empty();
        }
        Optional<Point> point =
                layout.distribution().point(id).or(() -> layout.distribution().point(id.replaceFirst("^'", "")));
        if (point.isEmpty()) {
            List<String> ids =
                    layout.distribution().points().stream().map(Point::id).toList();
            problems.add(at + ": the project has no panel, node or supply " + Phrase.quoted(id) + "."
                    + Nearest.to(id, ids)
                            .map(near -> " Maybe it is " + Phrase.quoted(near) + ".")
                            .orElse(" Give its id as in the project."));
            return Optional.empty();
        }
        return Optional.of(new PlaceReading(
                point.get().id(),
                volts,
                idle,
                running,
                peak,
                neutral,
                rotation,
                insulation,
                passed,
                visits.of(sheet, row)));
    }

    private Map<Phase, Double> byPhase(ReadTable.Row row, String header, String unit, double most, String id) {
        Map<Phase, Double> read = new EnumMap<>(Phase.class);
        for (Phase phase : Phase.values()) {
            amount(row, header.replace("%s", phase.name().toLowerCase(Locale.ROOT)), unit, most, id)
                    .ifPresent(value -> read.put(phase, value));
        }
        return read;
    }

    /** The same column where keys head the table: without a unit, a voltage by its phase. */
    private static String key(String header) {
        return header.endsWith(" to neutral v")
                ? header.replaceFirst("^measured ([abc]) to neutral v$", "voltage $1")
                : header.replaceFirst(" (a|mω)$", "");
    }

    private OptionalDouble amount(ReadTable.Row row, String header, String unit, double most, String id) {
        return cells.amount(
                FilledSheet.cell(row, sheet.column(header, key(header))),
                sheet.at(row),
                header + " of " + Phrase.quoted(id),
                unit,
                most);
    }
}
