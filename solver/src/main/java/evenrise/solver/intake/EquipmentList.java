package evenrise.solver.intake;

import evenrise.model.intake.Columns;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An equipment list as a project.
 *
 * @param project empty where no piece could be taken over
 * @param problems rows that could not be taken over, each with its place and what would help
 * @param guesses what was taken for granted, for confirmation
 * @param pieces that were taken over
 */
public record EquipmentList(
        Optional<Project> project, List<String> problems, List<String> guesses, int rows, int pieces, int breakers) {

    /**
     * @param name of the project
     * @throws IOException with a message for the user where the file cannot be read at all
     */
    public static EquipmentList read(Path file, Mapping mapping, String name) throws IOException {
        List<Sheet> sheets = SheetReader.read(file);
        List<Notice> notices = new ArrayList<>();
        List<Item> items = new ArrayList<>();
        int lists = 0;
        for (Sheet sheet : sheets) {
            if (mapping.sheet().isPresent() && !mapping.sheet().get().equals(sheet.name())) {
                continue;
            }
            Optional<Header> header =
                    Header.of(sheet, mapping.columns().orElse(Columns.BY_THEIR_WORDS), mapping.headerRow());
            if (header.isEmpty()) {
                notices.add(Notice.guess(
                        "sheet '" + sheet.name() + "' has no row that looks like headers and is left out"));
                continue;
            }
            lists++;
            RowReader reader = new RowReader(sheet, header.get(), mapping);
            reader.read();
            items.addAll(reader.items());
            notices.addAll(reader.notices());
        }
        if (lists == 0) {
            notices.add(new Notice(
                    true,
                    "",
                    "no row was found whose cells are headers such as quantity, name, room, watts. Maybe name them in a "
                            + "mapping file (--map), or begin with --template."));
        }
        return of(items, notices, mapping, name);
    }

    private static EquipmentList of(List<Item> items, List<Notice> notices, Mapping mapping, String name) {
        Bundler bundler = new Bundler(mapping);
        List<Bundler.Branch> branches = bundler.bundle(items);
        notices.addAll(bundler.notices());
        Optional<Project> project = Optional.empty();
        if (!branches.isEmpty()) {
            Sketch sketch = new Sketch(mapping);
            project = sketch.project(name, branches);
            notices.addAll(sketch.notices());
        } else if (notices.stream().noneMatch(Notice::isProblem)) {
            notices.add(new Notice(true, "", "the list holds no piece of equipment."));
        }
        return new EquipmentList(
                project,
                notices.stream().filter(Notice::isProblem).map(Notice::toString).toList(),
                notices.stream()
                        .filter(each -> !each.isProblem())
                        .map(Notice::toString)
                        .distinct()
                        .toList(),
                items.size(),
                branches.stream().mapToInt(branch -> branch.pieces().size()).sum(),
                branches.size());
    }
}
