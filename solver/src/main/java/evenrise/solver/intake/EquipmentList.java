package evenrise.solver.intake;

import evenrise.model.contract.Words;
import evenrise.model.intake.Mapping;
import evenrise.model.intake.SheetMapping;
import evenrise.model.plan.Finding;
import evenrise.model.project.Project;
import evenrise.solver.table.ReadTable;
import evenrise.solver.table.TableFileReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * An equipment list as a project.
 *
 * @param project empty where no piece could be taken over
 * @param notes what the list remarks of loads, by their ids
 * @param findings what there is to tell of it: problems, guesses, questions and so on by their kind
 * @param rows of which pieces were taken over
 * @param listed pieces in the list, whatever became of them
 * @param pieces that were taken over
 * @param leftOut pieces that were not, for reasons that the findings tell
 * @param columns how each was read
 * @param values how texts of columns were read
 * @param mapping that says all of it, to be corrected and read with again
 */
public record EquipmentList(
        Optional<Project> project,
        Map<String, String> notes,
        List<Finding> findings,
        int rows,
        int listed,
        int pieces,
        int leftOut,
        int breakers,
        List<ReadColumn> columns,
        List<ReadValue> values,
        Mapping mapping) {

    /** Rows that could not be taken over, each with its place and what would help. */
    public List<String> problems() {
        return told(Notice.Kind.PROBLEM);
    }

    /** What somebody has to decide. */
    public List<String> questions() {
        return told(Notice.Kind.QUESTION);
    }

    /** Life-safety equipment, which others feed. */
    public List<String> outside() {
        return told(Notice.Kind.OUTSIDE);
    }

    /** What was taken for granted, for confirmation. */
    public List<String> guesses() {
        return told(Notice.Kind.GUESS);
    }

    /** Rows that are in no load, as they are sums, headings or fed with what they belong to. */
    public List<String> rowsLeftOut() {
        return told(Notice.Kind.LEFT_OUT);
    }

    /** Columns that were left alone. */
    public List<String> notRead() {
        return told(Notice.Kind.NOT_READ);
    }

    /** @param kind problem, question, outside, left-out, guess or not-read */
    public List<Finding> findings(String kind) {
        return findings.stream().filter(each -> each.kind().equals(kind)).toList();
    }

    private List<String> told(Notice.Kind kind) {
        return findings(Words.word(kind)).stream()
                .map(Finding::message)
                .distinct()
                .toList();
    }

    /**
     * @param name of the project
     * @throws IOException with a message for the user where the file cannot be read at all
     */
    public static EquipmentList read(Path file, Mapping mapping, String name) throws IOException {
        List<ReadTable> sheets = TableFileReader.read(file);
        Notices notices = new Notices();
        List<Item> items = new ArrayList<>();
        List<ReadList> lists = new ArrayList<>();
        Set<String> rooms = new HashSet<>();
        int listed = 0;
        boolean isAsMapped = true;
        for (ReadTable sheet : sheets) {
            Optional<SheetMapping> how = mapping.of(sheet.name());
            if (how.isEmpty()) {
                continue;
            }
            Optional<Header> header = Header.of(sheet, how.get());
            if (header.isEmpty()) {
                notices.guess("sheet '" + sheet.name() + "' has no row that looks like headers and is left out");
                continue;
            }
            lists.add(new ReadList(sheet.name(), header.get()));
            isAsMapped &= header.get().hasAllMapped();
            RowReader reader = new RowReader(sheet, header.get(), mapping, notices);
            items.addAll(reader.read());
            rooms.addAll(reader.rooms());
            listed += reader.listed();
        }
        AlternateSheets.of(lists).ifPresent(notices::add);
        if (lists.isEmpty()) {
            noList(sheets, mapping).forEach(notices::add);
        }
        MappingInVain.of(sheets, lists, rooms, mapping).forEach(notices::add);
        // Figures under a header that is not there would be lost with every row, so that no row can be taken over.
        if (!isAsMapped) {
            notices.leaveOut(listed - notices.leftOut());
        }
        List<Bundler.Branch> branches = new Bundler(mapping, notices).bundle(isAsMapped ? items : List.of());
        Optional<Project> project = Optional.empty();
        if (!branches.isEmpty()) {
            project = new Sketch(mapping, notices).project(name, branches);
        } else if (notices.problems() == 0) {
            notices.add(Notice.problem("the list holds no piece of equipment that is to be fed from here."));
        }
        List<ReadValue> values = notices.values().all();
        return new EquipmentList(
                project,
                project.map(it -> Sketch.notes(it, branches)).orElse(Map.of()),
                notices.all(),
                (int) branches.stream()
                        .flatMap(branch -> branch.pieces().stream())
                        .map(Item::place)
                        .distinct()
                        .count(),
                listed,
                (int) branches.stream()
                        .flatMap(branch -> branch.pieces().stream())
                        .filter(piece -> !piece.isFurther())
                        .count(),
                notices.leftOut(),
                branches.size(),
                lists.stream().flatMap(list -> list.header().read().stream()).toList(),
                values,
                WholeMapping.of(mapping, lists, values));
    }

    /**
     * Names of the sheets that hold lists; none where the file is no workbook.
     *
     * @throws IOException with a message for the user where the file cannot be read at all
     */
    public static List<String> sheets(Path file, Mapping mapping) throws IOException {
        return TableFileReader.read(file).stream()
                .filter(sheet -> !sheet.name().isEmpty())
                .filter(sheet -> mapping.of(sheet.name())
                        .flatMap(how -> Header.of(sheet, how))
                        .isPresent())
                .map(ReadTable::name)
                .toList();
    }

    private static List<Notice> noList(List<ReadTable> sheets, Mapping mapping) {
        List<ReadTable> wanted = sheets.stream()
                .filter(sheet -> mapping.of(sheet.name()).isPresent())
                .toList();
        if (wanted.isEmpty()) {
            return List.of();
        }
        List<Notice> unmatched = wanted.stream()
                .flatMap(sheet ->
                        Header.unmatched(sheet, mapping.of(sheet.name()).orElseThrow()).stream())
                .toList();
        return !unmatched.isEmpty()
                ? unmatched
                : List.of(Notice.problem(
                        "no row was found whose cells are headers such as quantity, name, room, watts. Maybe name them"
                                + " in a mapping file (--map), or begin with --template."));
    }
}
