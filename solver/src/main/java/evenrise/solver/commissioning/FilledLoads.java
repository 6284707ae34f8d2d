package evenrise.solver.commissioning;

import evenrise.model.check.Nearest;
import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.measured.PoleReading;
import evenrise.model.measured.SiteReadings;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.solver.rework.MeasuredColumn;
import evenrise.solver.table.Cell;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/** A row a pole. */
final class FilledLoads {
    private static final double MOST_AMPS = 6300;
    private static final double MOST_PEAK_AMPS = 1e6;
    private static final double MOST_SECONDS = 86_400;

    /** Headers of the sheet that are printed, or read here. */
    private static final Set<String> KNOWN = Set.of(
            "panel",
            "slots",
            "phase",
            "phases",
            "load",
            "name",
            "control",
            "planned idle a",
            "planned running a",
            "idle measured a",
            "running measured a",
            "peak measured a",
            "on planned s",
            "on measured s",
            "off planned s",
            "off measured s",
            "pass or fail",
            "date",
            "meter",
            "instrument",
            "remark",
            "remarks",
            "initials",
            "first slot",
            "measured",
            "idle measured",
            "peak measured",
            "on measured",
            "off measured",
            "on s",
            "off s",
            "idle a",
            "running a",
            "result",
            "slot");

    private final FilledSheet sheet;
    private final FilledCells cells;
    private final Layout layout;
    private final Visits visits;
    private final List<String> problems;
    private final List<String> notes;
    private final Map<String, Load> loads = new LinkedHashMap<>();
    private final Set<String> seen = new HashSet<>();
    private final OptionalInt load;
    private final OptionalInt phase;
    private final OptionalInt idle;
    private final OptionalInt running;

    FilledLoads(
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
        this.load = sheet.column(MeasuredColumn.LOAD, "load");
        this.phase = sheet.column(MeasuredColumn.PHASE, "phases");
        this.idle = sheet.column(MeasuredColumn.IDLE, "idle measured a", "idle measured");
        this.running = sheet.column(MeasuredColumn.RUNNING, "running measured a", "measured");
        // As tables show an id: without marks that turn text, and inert for spreadsheets.
        layout.project().loads().forEach(each -> {
            loads.put(each.id(), each);
            loads.putIfAbsent(Harmless.shown(each.id()), each);
            loads.putIfAbsent("'" + Harmless.shown(each.id()), each);
        });
    }

    SiteReadings read() {
        List<PoleReading> read = new ArrayList<>();
        int blank = 0;
        for (ReadTable.Row row : sheet.rows()) {
            Optional<PoleReading> one = row(row);
            one.ifPresent(read::add);
            blank += one.isPresent() ? 0 : 1;
        }
        if (blank > 0 && problems.isEmpty()) {
            notes.add(sheet.name() + ": " + Phrase.counted(blank, "row") + " of "
                    + sheet.rows().size() + " without a reading.");
        }
        phasesLeftOut(read);
        TreeSet<String> known = new TreeSet<>(KNOWN);
        sheet.columns().forEach((header, column) -> {
            if (List.of(load, phase, idle, running).contains(OptionalInt.of(column))) {
                known.add(header);
            }
        });
        FilledSheets.unread(sheet, known, notes);
        return new SiteReadings(read, List.of(), List.of());
    }

    private Optional<PoleReading> row(ReadTable.Row row) {
        String at = sheet.at(row);
        String id = FilledSheet.cell(row, load).text();
        OptionalDouble idleAmps = amps(row, idle, "idle measured", id, MOST_AMPS);
        OptionalDouble runningAmps = amps(row, running, "running measured", id, MOST_AMPS);
        OptionalDouble peakAmps =
                amps(row, sheet.column("peak measured a", "peak measured"), "peak measured", id, MOST_PEAK_AMPS);
        OptionalDouble on = seconds(row, "on measured s", id);
        OptionalDouble off = seconds(row, "off measured s", id);
        Optional<Boolean> passed = cells.yes(
                FilledSheet.cell(row, sheet.column("pass or fail", "result")),
                at,
                "pass or fail of load " + Phrase.quoted(id));
        Optional<String> remark = FilledSheets.said(sheet.text(row, "remark", "remarks"));
        boolean isBlank = idleAmps.isEmpty()
                && runningAmps.isEmpty()
                && peakAmps.isEmpty()
                && on.isEmpty()
                && off.isEmpty()
                && passed.isEmpty()
                && remark.isEmpty();
        if (isBlank) {
            return Optional.empty();
        }
        Load it = loads.get(id);
        if (it == null) {
            problems.add(at + ": load " + Phrase.quoted(id) + " is not in the project."
                    + Nearest.to(id, loads.keySet())
                            .map(near -> " Maybe it is " + Phrase.quoted(near) + ".")
                            .orElse(" Give the load's id as in the project, or delete the row."));
            return Optional.empty();
        }
        if (idleAmps.isPresent() && runningAmps.isPresent() && idleAmps.getAsDouble() > runningAmps.getAsDouble()) {
            problems.add(at + ": load " + Phrase.quoted(id) + " draws more idle (" + idleAmps.getAsDouble()
                    + " A) than running (" + runningAmps.getAsDouble() + " A). Maybe the two columns are exchanged.");
            return Optional.empty();
        }
        Optional<Phase> read = phase(row, it, at);
        PoleReading reading = new PoleReading(
                it.id(), read, idleAmps, runningAmps, peakAmps, on, off, passed, remark, visits.of(sheet, row));
        boolean isFirst = seen.add(it.id() + " " + read + " " + reading.visit().date());
        if (!isFirst && reading.hasCurrent()) {
            notes.add(at + ": load " + Phrase.quoted(it.id()) + " was read before at the same pole and day; the greater"
                    + " reading counts.");
        }
        return Optional.of(reading);
    }

    private OptionalDouble amps(ReadTable.Row row, OptionalInt column, String what, String id, double most) {
        Cell cell = FilledSheet.cell(row, column);
        return cells.amount(cell, sheet.at(row), what + " of load " + Phrase.quoted(id), "a", most);
    }

    private OptionalDouble seconds(ReadTable.Row row, String header, String id) {
        return cells.amount(
                FilledSheet.cell(row, sheet.column(header, header.replaceFirst(" s$", ""))),
                sheet.at(row),
                header + " of load " + Phrase.quoted(id),
                "s",
                MOST_SECONDS);
    }

    /** Empty where the row is about all poles, or does not say. */
    private Optional<Phase> phase(ReadTable.Row row, Load of, String at) {
        String word =
                FilledSheet.cell(row, phase).text().toUpperCase(Locale.ROOT).replaceFirst("^L(?=[1-3]$)", "");
        if (word.isEmpty() || word.length() > 1 && word.matches("[ABC]+")) {
            return Optional.empty();
        }
        for (Phase each : Phase.values()) {
            if (each.name().equals(word) || word.equals(String.valueOf(each.ordinal() + 1))) {
                return Optional.of(each);
            }
        }
        problems.add(at + ": phase " + Phrase.quoted(word) + " of load " + Phrase.quoted(of.id())
                + " is none. Write A, B or C, or 1 to 3.");
        return Optional.empty();
    }

    /** Of loads that were read on some poles alone, and said so. */
    private void phasesLeftOut(List<PoleReading> read) {
        Map<String, Set<Phase>> phases = new HashMap<>();
        read.stream()
                .filter(each ->
                        each.idleAmps().isPresent() || each.runningAmps().isPresent())
                .forEach(each -> {
                    Set<Phase> own = phases.computeIfAbsent(each.load(), any -> new LinkedHashSet<>());
                    each.phase().ifPresent(own::add);
                });
        List<String> some = phases.entrySet().stream()
                .filter(each -> !each.getValue().isEmpty()
                        && layout.placement(each.getKey())
                                .filter(placement -> placement.phases().size()
                                        > each.getValue().size())
                                .isPresent())
                .map(Map.Entry::getKey)
                .sorted()
                .toList();
        if (!some.isEmpty()) {
            notes.add(Phrase.counted(some.size(), "load")
                    + " read on some poles alone; the greatest reading counts for all: " + Phrase.quoted(some, 12)
                    + ".");
        }
    }
}
