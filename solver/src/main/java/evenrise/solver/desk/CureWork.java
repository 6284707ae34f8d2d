package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.solver.app.DraftedSheets;
import evenrise.solver.app.Effort;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.NightOptions;
import evenrise.solver.app.ReworkDraft;
import evenrise.solver.app.ReworkRequest;
import evenrise.solver.app.SheetOptions;
import evenrise.solver.app.Source;
import evenrise.solver.app.SpareOptions;
import evenrise.solver.desk.CureAnswers.CureOrderView;
import evenrise.solver.desk.CureAnswers.CureSheetView;
import evenrise.solver.desk.CureAnswers.CureWrittenView;
import evenrise.solver.desk.CureAnswers.CuresView;
import evenrise.solver.desk.CureRequests.LaidStage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** Cures of the plan on the desk, taken as built: searched for, put in order, looked at as sheets and written. */
final class CureWork implements DeskPart {
    private static final int WIDE = 1400;
    private static final double MOST_MINUTES = 1e6;
    private static final String READINGS = "readings";

    private final Desk desk;
    private final DeskFiles files;
    private final Jobs jobs;
    private final Branches branches;
    private final CureSearch search;
    private Optional<Printed> printed = Optional.empty();

    /** Sheets that were looked at last, so that pages are turned at once. */
    private record Printed(
            ReworkDraft draft, int cure, List<LaidStage> stages, boolean isLetter, DraftedSheets sheets) {}

    CureWork(Desk desk, DeskFiles files, Jobs jobs) {
        this.desk = desk;
        this.files = files;
        this.jobs = jobs;
        this.branches = new Branches(files, desk);
        this.search = new CureSearch(desk, branches::names);
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.shown("/api/cures", "The search for cures, and what it found", CuresView.class, search::view);
        routes.asked(
                "/api/cures/begin",
                "Cures of the plan on the desk, taken as built, are searched for; nothing is changed",
                CureRequests.SearchCures.class,
                CuresView.class,
                this::begin);
        routes.asked(
                "/api/cures/stop",
                "The search for cures ends with the best that it has",
                DeskRequests.Bare.class,
                CuresView.class,
                any -> stop());
        routes.asked(
                "/api/cures/order",
                "The order of a cure's work, as the program has it or by hand, with the referee's word on each step",
                CureRequests.CureOrder.class,
                CureOrderView.class,
                this::order);
        routes.asked(
                "/api/cures/sheet",
                "A page of the sheets of a cure's work, as it is printed",
                CureRequests.CureSheet.class,
                CureSheetView.class,
                this::sheet);
        routes.asked(
                "/api/cures/write",
                "Plans, order of work and sheets are written into a folder beside the project",
                CureRequests.WriteCure.class,
                CureWrittenView.class,
                this::write);
        routes.asked(
                "/api/cures/take",
                "A cure takes the place of the plan on the desk, with what was measured in the project",
                CureRequests.TakeCure.class,
                DeskAnswers.DeskSheet.class,
                this::take);
    }

    private CuresView begin(CureRequests.SearchCures asked) {
        DeskState state = desk.judged().state();
        if (state.plan().assignments().isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "the plan on the desk places nothing, so there is nothing that was built. Put each load where it is"
                            + " today.");
        }
        if (asked.nights().stream().anyMatch(minutes -> !(minutes > 0 && minutes <= MOST_MINUTES))) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "a night has more than 0 and at most 1,000,000 minutes.");
        }
        boolean isMeasured = !asked.readings().isBlank();
        search.begin(state, isMeasured, control -> drafted(state, asked, control));
        return search.view();
    }

    private CuresView stop() {
        search.stop();
        return search.view();
    }

    /** What was pasted lies in a folder of its own while it is read. */
    private ReworkDraft drafted(DeskState state, CureRequests.SearchCures asked, JobControl control) {
        Path aside = aside();
        try {
            Optional<Path> readings = kept(aside.resolve(READINGS), asked.readings());
            Optional<Path> spares = kept(aside.resolve("spares.csv"), asked.spares());
            return jobs.draftRework(request(state, asked, readings, spares), control);
        } catch (JobFailed e) {
            throw new JobFailed(
                    e.reason(),
                    e.messages().stream()
                            .map(each ->
                                    each.replace(aside + aside.getFileSystem().getSeparator(), ""))
                            .toList());
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, "nothing can be written in the folder for temporary files.");
        } finally {
            remove(aside);
        }
    }

    private static Path aside() {
        try {
            return Files.createTempDirectory("evenrise-desk");
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, "nothing can be written in the folder for temporary files.");
        }
    }

    private static Optional<Path> kept(Path file, String text) throws IOException {
        return text.isBlank() ? Optional.empty() : Optional.of(Files.writeString(file, text));
    }

    private static void remove(Path folder) {
        for (String each : List.of(READINGS, "spares.csv", "")) {
            folder.resolve(each).toFile().delete();
        }
    }

    private ReworkRequest request(
            DeskState state, CureRequests.SearchCures asked, Optional<Path> readings, Optional<Path> spares) {
        Optional<Source> was = asked.was().isBlank()
                ? Optional.empty()
                : Optional.of(Source.stream(
                        new ByteArrayInputStream(asked.was().getBytes(StandardCharsets.UTF_8)),
                        "the project as it was"));
        return new ReworkRequest(
                Source.of(state.project()),
                Source.of(state.plan()),
                readings,
                files.folder(),
                effort(asked),
                OptionalDouble.empty(),
                OptionalInt.empty(),
                asked.deadAtOnce(),
                asked.keepsRunning(),
                new NightOptions(asked.stayLive(), asked.mostOut(), asked.nights()),
                asked.to().isBlank() ? Optional.empty() : Optional.of(Source.file(branches.file(asked.to()))),
                was,
                new SpareOptions(spares, asked.leavesSpares()),
                false,
                Optional.empty(),
                new SheetOptions(
                        Harmless.shown(asked.revision()),
                        asked.date()
                                .map(Harmless::shown)
                                .orElseGet(() -> SheetOptions.usual().date()),
                        Optional.empty()));
    }

    private static Effort effort(CureRequests.SearchCures asked) {
        if (asked.moves().isPresent()) {
            return Effort.ofMoves((long) asked.moves().getAsDouble());
        }
        return asked.timeSeconds().isPresent()
                ? Effort.ofTime(
                        Duration.ofMillis((long) Math.ceil(asked.timeSeconds().getAsDouble() * 1000)))
                : Effort.USUAL;
    }

    private CureOrderView order(CureRequests.CureOrder asked) {
        CureSearch.Found found = search.found();
        return new CureOrderView(
                found.search(),
                asked.cure(),
                sets(asked.stages())
                        .map(sets -> found.draft().order(asked.cure(), sets))
                        .orElseGet(() -> found.draft().order(asked.cure())));
    }

    private static Optional<List<List<Integer>>> sets(List<LaidStage> stages) {
        return stages.isEmpty()
                ? Optional.empty()
                : Optional.of(stages.stream().map(LaidStage::changes).toList());
    }

    private synchronized CureSheetView sheet(CureRequests.CureSheet asked) {
        DraftedSheets sheets = printed(search.found().draft(), asked);
        int page = Math.min(asked.page(), sheets.pages());
        return new CureSheetView(page, sheets.pages(), Base64.getEncoder().encodeToString(sheets.png(page - 1, WIDE)));
    }

    private DraftedSheets printed(ReworkDraft draft, CureRequests.CureSheet asked) {
        boolean isThere = printed.filter(it -> it.draft() == draft
                        && it.cure() == asked.cure()
                        && it.stages().equals(asked.stages())
                        && it.isLetter() == asked.isLetter())
                .isPresent();
        if (!isThere) {
            DraftedSheets sheets = draft.printed(asked.cure(), sets(asked.stages()), asked.isLetter());
            printed.ifPresent(it -> it.sheets().close());
            printed = Optional.of(new Printed(draft, asked.cure(), asked.stages(), asked.isLetter(), sheets));
        }
        return printed.orElseThrow().sheets();
    }

    private CureWrittenView write(CureRequests.WriteCure asked) {
        String name = Branches.named(asked.name());
        Path folder = files.folder().resolve(name);
        search.found().draft().write(asked.cure(), sets(asked.stages()), folder);
        try (Stream<Path> all = Files.list(folder)) {
            return new CureWrittenView(
                    name,
                    all.map(each -> each.getFileName().toString()).sorted().toList());
        } catch (IOException e) {
            return new CureWrittenView(name, List.of());
        }
    }

    private DeskAnswers.DeskSheet take(CureRequests.TakeCure asked) {
        CureSearch.Found found = search.found();
        DeskState done = found.done(asked.cure());
        if (!desk.changeIf(found.of(), "a cure of the plan as built", now -> done)) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "the plan on the desk has changed since this search began. Search again, from what is there now.");
        }
        desk.beginAnew();
        return desk.sheet();
    }

    @Override
    public void close() {
        search.stop();
    }
}
