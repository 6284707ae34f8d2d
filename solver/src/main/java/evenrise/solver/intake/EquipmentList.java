package evenrise.solver.intake;

import evenrise.model.contract.Words;
import evenrise.model.intake.Columns;
import evenrise.model.intake.Mapping;
import evenrise.model.plan.Finding;
import evenrise.model.project.Project;
import evenrise.solver.table.ReadTable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * An equipment list as a project.
 *
 * @param project empty where no piece could be taken over
 * @param notes what the list remarks of loads, by their ids
 * @param findings what there is to tell of it: problems, guesses, questions and so on by their kind
 * @param rows that hold pieces
 * @param listed pieces in the list, whatever became of them
 * @param pieces that were taken over
 * @param leftOut pieces that were not, for reasons that the findings tell
 */
public record EquipmentList(
        Optional<Project> project,
        Map<String, String> notes,
        List<Finding> findings,
        int rows,
        int listed,
        int pieces,
        int leftOut,
        int breakers) {

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

    /** Columns that were left alone. */
    public List<String> notRead() {
        return told(Notice.Kind.NOT_READ);
    }

    private List<String> told(Notice.Kind kind) {
        return findings.stream()
                .filter(each -> each.kind().equals(Words.word(kind)))
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
        Columns columns = mapping.columns().orElse(Columns.BY_THEIR_WORDS);
        Notices notices = new Notices();
        List<Item> items = new ArrayList<>();
        int lists = 0;
        int listed = 0;
        int rows = 0;
        boolean isAsMapped = true;
        for (ReadTable sheet : sheets) {
            if (mapping.sheet().isPresent() && !mapping.sheet().get().equals(sheet.name())) {
                continue;
            }
            Optional<Header> header = Header.of(sheet, columns, mapping.headerRow());
            if (header.isEmpty()) {
                notices.guess("sheet '" + sheet.name() + "' has no row that looks like headers and is left out");
                continue;
            }
            lists++;
            isAsMapped &= header.get().hasAllMapped();
            RowReader reader = new RowReader(sheet, header.get(), mapping, notices);
            items.addAll(reader.read());
            listed += reader.listed();
            rows += reader.rows();
        }
        if (lists == 0) {
            noList(sheets, mapping, columns).forEach(notices::add);
        }
        // Figures under a header that is not there would be lost with every row, so that no row can be taken over.
        if (!isAsMapped) {
            notices.leaveOut(listed - notices.leftOut());
        }
        return of(isAsMapped ? items : List.of(), new Counts(rows, listed), notices, mapping, name);
    }

    private record Counts(int rows, int listed) {}

    private static List<Notice> noList(List<ReadTable> sheets, Mapping mapping, Columns columns) {
        List<ReadTable> wanted = sheets.stream()
                .filter(sheet -> mapping.sheet().map(sheet.name()::equals).orElse(true))
                .toList();
        if (wanted.isEmpty()) {
            return List.of(Notice.problem("the mapping reads sheet '"
                    + mapping.sheet().orElse("")
                    + "', which is not there. The sheets are: "
                    + sheets.stream().map(sheet -> "'" + sheet.name() + "'").collect(Collectors.joining(", ")) + "."));
        }
        List<Notice> unmatched = wanted.stream()
                .flatMap(sheet -> Header.unmatched(sheet, columns, mapping.headerRow()).stream())
                .toList();
        return !unmatched.isEmpty()
                ? unmatched
                : List.of(Notice.problem(
                        "no row was found whose cells are headers such as quantity, name, room, watts. Maybe name them"
                                + " in a mapping file (--map), or begin with --template."));
    }

    private static EquipmentList of(List<Item> items, Counts counts, Notices notices, Mapping mapping, String name) {
        List<Bundler.Branch> branches = new Bundler(mapping, notices).bundle(items);
        Optional<Project> project = Optional.empty();
        if (!branches.isEmpty()) {
            project = new Sketch(mapping, notices).project(name, branches);
        } else if (notices.problems() == 0) {
            notices.add(Notice.problem("the list holds no piece of equipment that is to be fed from here."));
        }
        return new EquipmentList(
                project,
                project.map(it -> Sketch.notes(it, branches)).orElse(Map.of()),
                notices.all(),
                items.isEmpty() ? 0 : counts.rows(),
                counts.listed(),
                (int) branches.stream()
                        .flatMap(branch -> branch.pieces().stream())
                        .filter(piece -> !piece.isFurther())
                        .count(),
                notices.leftOut(),
                branches.size());
    }
}
