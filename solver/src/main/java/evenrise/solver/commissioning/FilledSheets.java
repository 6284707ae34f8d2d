package evenrise.solver.commissioning;

import evenrise.model.contract.Phrase;
import evenrise.model.measured.DeviceReading;
import evenrise.model.measured.Meter;
import evenrise.model.measured.SiteReadings;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.commissioning.FilledSheet.Kind;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/** Reads filled commissioning sheets, and lists of readings: all tables of all files in one pass, with every problem told. */
public final class FilledSheets {
    private static final double MOST_MILLIAMPS = 1e6;
    private static final double MOST_MILLIS = 1e6;
    private static final double MOST_PERCENT = 100;
    private static final double MOST_RANGE_AMPS = 1e6;
    private static final double MOST_SECONDS = 3600;

    private final List<FilledSheet> sheets = new ArrayList<>();
    private final List<String> problems = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private final Map<String, Meter> meters = new LinkedHashMap<>();

    private FilledSheets() {}

    /**
     * @param files tables of each file, by the name of the file
     * @param day on which was read what states none
     */
    public static ReadSheets read(
            Map<String, List<ReadTable>> files, Project project, Plan plan, Optional<String> day) {
        FilledSheets it = new FilledSheets();
        files.forEach(it::recognise);
        it.sheets.stream().filter(each -> each.kind() == Kind.METERS).forEach(it::meters);
        Layout layout = Layout.of(project, plan);
        Visits visits = new Visits(it.meters, day, it.problems);
        SiteReadings readings = SiteReadings.NONE;
        for (FilledSheet each : it.sheets) {
            FilledCells cells = new FilledCells(it.problems, each.isCommaDecimal());
            readings = readings.and(
                    switch (each.kind()) {
                        case LOADS -> new FilledLoads(each, cells, layout, visits, it.problems, it.notes).read();
                        case PLACES -> new FilledPlaces(each, cells, layout, visits, it.problems, it.notes).read();
                        case DEVICES -> new SiteReadings(List.of(), List.of(), devices(each, cells));
                        case METERS -> SiteReadings.NONE;
                    });
        }
        it.notes.addAll(visits.notes());
        if (readings.isEmpty() && it.problems.isEmpty()) {
            it.problems.add("the sheets are blank: there is no reading in them. Fill in what was measured.");
        }
        return new ReadSheets(readings, it.problems, it.notes);
    }

    /** Whether some table is a sheet of ours, filled or not, and not a plain list of readings. */
    public static boolean isOurs(List<ReadTable> tables) {
        return tables.stream()
                .anyMatch(each -> FilledSheet.of("", each, false)
                        .filter(sheet -> sheet.kind() == Kind.LOADS)
                        .isPresent());
    }

    /** Whether some table is a sheet of any kind, or a list of readings. */
    public static boolean isAny(List<ReadTable> tables) {
        return tables.stream()
                .anyMatch(each -> FilledSheet.of("", each, tables.size() == 1).isPresent());
    }

    private void recognise(String file, List<ReadTable> tables) {
        int before = sheets.size();
        for (ReadTable each : tables) {
            String name = each.name().isEmpty() ? file : file + " sheet '" + each.name() + "'";
            FilledSheet.of(name, each, tables.size() == 1).ifPresent(sheets::add);
        }
        if (sheets.size() == before) {
            problems.add(file + ": no table in it is a filled commissioning sheet or a list of readings. Give"
                    + " commissioning.csv, tests.csv, feeders.csv, residual.csv, meters.csv or plan.xlsx as 'report' writes"
                    + " them, or a table with the columns load, phase, running_a, idle_a.");
        }
    }

    private void meters(FilledSheet sheet) {
        FilledCells cells = new FilledCells(problems, sheet.isCommaDecimal());
        for (ReadTable.Row row : sheet.rows()) {
            String name = sheet.text(row, "meter");
            String at = sheet.at(row);
            OptionalDouble range = cells.amount(
                    FilledSheet.cell(row, sheet.column("range a", "range")), at, "the range", "a", MOST_RANGE_AMPS);
            OptionalDouble ofRange = percent(sheet, cells, row, "off by of range");
            OptionalDouble ofReading = percent(sheet, cells, row, "off by of reading");
            OptionalDouble seconds = cells.amount(
                    FilledSheet.cell(row, sheet.column("off by s", "seconds")), at, "off by, s", "s", MOST_SECONDS);
            if (ofRange.isPresent() && range.isEmpty()) {
                problems.add(at + ": meter " + Phrase.quoted(name)
                        + " is off by a part of its range, which is not stated. Fill in the range, A.");
            }
            Meter usual = Meter.usual(name);
            boolean statesCurrent = ofRange.isPresent() || ofReading.isPresent();
            meters.put(
                    Visits.bare(name),
                    new Meter(
                            name,
                            range,
                            ofRange.orElse(0),
                            statesCurrent ? ofReading.orElse(0) : usual.ofReadingPercent(),
                            statesCurrent ? 0 : usual.leastAmps(),
                            seconds.orElse(Meter.BY_HAND_SECONDS),
                            said(sheet.text(row, "make type serial number", "what")),
                            said(sheet.text(row, "calibrated until", "calibrated"))));
        }
    }

    private OptionalDouble percent(FilledSheet sheet, FilledCells cells, ReadTable.Row row, String header) {
        return cells.amount(
                FilledSheet.cell(row, sheet.column(header, header.replace("off by ", ""))),
                sheet.at(row),
                header + ", %",
                "%",
                MOST_PERCENT);
    }

    static Optional<String> said(String words) {
        return Optional.of(words).filter(each -> !each.isEmpty());
    }

    private static List<DeviceReading> devices(FilledSheet sheet, FilledCells cells) {
        List<DeviceReading> devices = new ArrayList<>();
        for (ReadTable.Row row : sheet.rows()) {
            String at = sheet.at(row);
            DeviceReading read = new DeviceReading(
                    sheet.text(row, "place"),
                    sheet.text(row, "protects"),
                    milliamps(sheet, cells, row, "rated ma", "rated"),
                    milliamps(sheet, cells, row, "leakage measured ma", "leakage"),
                    milliamps(sheet, cells, row, "tripped at ma", "tripped at"),
                    cells.amount(
                            FilledSheet.cell(row, sheet.column("tripped after ms", "tripped after")),
                            at,
                            "tripped after",
                            "ms",
                            MOST_MILLIS),
                    cells.yes(FilledSheet.cell(row, sheet.column("pass or fail", "result")), at, "pass or fail"),
                    at);
            if (read.leakageMilliamps().isPresent()
                    || read.trippedAtMilliamps().isPresent()
                    || read.trippedAfterMillis().isPresent()
                    || read.passed().isPresent()) {
                devices.add(read);
            }
        }
        return devices;
    }

    private static OptionalDouble milliamps(
            FilledSheet sheet, FilledCells cells, ReadTable.Row row, String header, String key) {
        return cells.amount(
                FilledSheet.cell(row, sheet.column(header, key)), sheet.at(row), header, "ma", MOST_MILLIAMPS);
    }

    /** Columns that are filled and not read. */
    static void unread(FilledSheet sheet, TreeSet<String> read, List<String> notes) {
        List<String> unread = sheet.unread(read);
        if (!unread.isEmpty()) {
            notes.add(sheet.name() + ": " + Phrase.counted(unread.size(), "filled column")
                    + " not read, and left in the" + " file: " + Phrase.quoted(unread, 12) + ".");
        }
    }
}
