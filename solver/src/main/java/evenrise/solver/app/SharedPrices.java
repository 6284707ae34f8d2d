package evenrise.solver.app;

import evenrise.model.check.Objection;
import evenrise.model.check.ProjectChecks;
import evenrise.model.file.WholeFile;
import evenrise.model.project.Project;
import evenrise.solver.exchange.PriceTable;
import evenrise.solver.exchange.SharedCatalogue;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** Prices from a file that many bids share, in the place of a project's own. */
final class SharedPrices {
    private static final int MOST_PROBLEMS = 40;

    private SharedPrices() {}

    /**
     * The project as it is where no file is named.
     *
     * @param note takes what of the file does not meet the project
     */
    static Project on(Project project, Optional<Path> file, Consumer<String> note) {
        if (file.isEmpty()) {
            return project;
        }
        String name = file.get().toString();
        SharedCatalogue.Read read = read(file.get());
        SharedCatalogue shared = read.catalogue().orElseThrow(() -> failed(name, read.problems()));
        shared.remarks(project).forEach(remark -> note.accept(name + ": " + remark));
        Project priced = shared.on(project);
        List<String> wrong = ProjectChecks.errors(priced).stream()
                .filter(each -> each.pointer().startsWith("/catalogue")
                        || each.pointer().contains("price_breaks"))
                .map(SharedPrices::words)
                .toList();
        if (!wrong.isEmpty()) {
            throw failed(name, wrong);
        }
        return priced;
    }

    /** A project's own prices, or rows that show how a table is filled in: a workbook, or a table of values by its ending. */
    static void write(Optional<Project> project, Path file) {
        PriceTable table = project.map(it -> PriceTable.of(
                        it.catalogue()
                                .orElseThrow(
                                        () -> new JobFailed(
                                                JobFailed.Reason.INPUT,
                                                "the project has no catalogue. Begin with 'evenrise catalogue --template FILE'.")),
                        it.boardTypes()))
                .orElseGet(PriceTable::template);
        boolean isCsv = file.toString().toLowerCase(Locale.ROOT).endsWith(".csv");
        Outputs.write(() -> WholeFile.write(file, isCsv ? table.csv() : table.workbook()));
    }

    private static SharedCatalogue.Read read(Path file) {
        try {
            return SharedCatalogue.read(file);
        } catch (NoSuchFileException e) {
            throw new JobFailed(JobFailed.Reason.INPUT, "file '" + file + "' does not exist.");
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.INPUT, "file '" + file + "' cannot be read: " + e.getMessage() + ".");
        }
    }

    private static String words(Objection wrong) {
        return wrong.pointer() + " is " + wrong.value() + "; expected " + wrong.expected() + ".";
    }

    private static JobFailed failed(String name, List<String> problems) {
        Stream<String> more = problems.size() > MOST_PROBLEMS
                ? Stream.of(name + ": and " + (problems.size() - MOST_PROBLEMS) + " more.")
                : Stream.empty();
        return new JobFailed(
                JobFailed.Reason.INPUT,
                Stream.concat(problems.stream().limit(MOST_PROBLEMS).map(each -> name + ": " + each), more)
                        .toList());
    }
}
