package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.model.project.Project;
import evenrise.solver.app.Cancellation;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.JobListener;
import evenrise.solver.app.JobProgress;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import evenrise.solver.desk.EstimateAnswers.PriceTablesView;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Prices that many bids share: tables in the folder, taken into the project's catalogue or written from it. */
final class CatalogueWork implements DeskPart {
    private static final Pattern TABLE = Pattern.compile("(.+)[.](csv|xlsx)");
    private static final int MOST = 200;

    private final Desk desk;
    private final DeskFiles files;
    private final Jobs jobs;

    CatalogueWork(Desk desk, DeskFiles files, Jobs jobs) {
        this.desk = desk;
        this.files = files;
        this.jobs = jobs;
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.shown(
                "/api/catalogue/tables",
                "Tables in the folder, which may hold prices",
                PriceTablesView.class,
                this::tables);
        routes.asked(
                "/api/catalogue/take",
                "Prices of a table in the folder take the place of the project's own",
                EstimateRequests.PriceTableFile.class,
                DeskAnswers.DeskSheet.class,
                this::take);
        routes.asked(
                "/api/catalogue/write",
                "The project's prices are written as a table that other bids can take",
                EstimateRequests.PriceTableFile.class,
                PriceTablesView.class,
                this::write);
    }

    private PriceTablesView tables() {
        try (Stream<Path> all = Files.list(files.folder())) {
            return new PriceTablesView(all.filter(Files::isRegularFile)
                    .map(each -> each.getFileName().toString())
                    .filter(CatalogueWork::isTable)
                    .sorted()
                    .limit(MOST)
                    .toList());
        } catch (IOException e) {
            return new PriceTablesView(List.of());
        }
    }

    private static boolean isTable(String name) {
        Matcher table = TABLE.matcher(name);
        return table.matches() && Branches.canBeNamed(table.group(1));
    }

    private DeskAnswers.DeskSheet take(EstimateRequests.PriceTableFile asked) {
        Path table = named(asked.file());
        DeskState state = desk.judged().state();
        Project priced = jobs.priced(Source.of(state.project()), table, new JobControl(notes(), Cancellation.NEVER));
        desk.change("prices of " + asked.file(), now -> {
            if (now.state() != state) {
                throw new JobFailed(
                        JobFailed.Reason.REQUEST, "somebody else changed the project at the same moment. Try again.");
            }
            return state.under(priced, state.notes());
        });
        return desk.sheet();
    }

    private JobListener notes() {
        return new JobListener() {
            @Override
            public void progress(JobProgress now) {
                // It takes no time.
            }

            @Override
            public void note(String text) {
                desk.tell(text);
            }
        };
    }

    private PriceTablesView write(EstimateRequests.PriceTableFile asked) {
        Path table = named(asked.file());
        if (Files.exists(table)) {
            throw refused("there is a file '" + Harmless.shown(asked.file()) + "' already. Name another.");
        }
        jobs.prices(Optional.of(Source.of(desk.judged().state().project())), table);
        return tables();
    }

    private Path named(String file) {
        if (!isTable(file)) {
            throw refused("a table of prices cannot be called '" + Harmless.shown(Harmless.cut(file, 80))
                    + "'. Letters, digits, spaces, - and _ make a name, .csv or .xlsx ends it.");
        }
        return files.folder().resolve(file);
    }

    private static JobFailed refused(String why) {
        return new JobFailed(JobFailed.Reason.REQUEST, why);
    }
}
