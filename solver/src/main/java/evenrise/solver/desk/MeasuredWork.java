package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.model.project.Load;
import evenrise.model.project.MeasuredValue;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Distribution;
import evenrise.solver.app.CommissionResult;
import evenrise.solver.app.DocumentSet;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.SaidColumns;
import evenrise.solver.desk.DeskAnswers.DeskSheet;
import evenrise.solver.desk.MeasuredAnswers.AsBuiltView;
import evenrise.solver.desk.MeasuredAnswers.FoundView;
import evenrise.solver.desk.MeasuredAnswers.MeasuredView;
import evenrise.solver.desk.MeasuredAnswers.SiteFilesView;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What was read and recorded on site beside the plan on the desk, as {@code commission} and {@code observe} read it; then,
 * when somebody takes it, in the project.
 */
final class MeasuredWork implements DeskPart {
    private final Desk desk;
    private final DeskFiles files;
    private final Jobs jobs;
    private final SiteFiles site;
    private final SiteReading reading;
    private MeasuredRequests.Circumstances circumstances = new MeasuredRequests.Circumstances("", "", "", "");
    private Set<String> inFullUse = Set.of();
    private Optional<SiteReading.Told> told = Optional.empty();
    private Optional<Project> taken = Optional.empty();

    MeasuredWork(Desk desk, DeskFiles files, Jobs jobs) {
        this.desk = desk;
        this.files = files;
        this.jobs = jobs;
        this.site = new SiteFiles(jobs);
        this.reading = new SiteReading(files, jobs);
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.shown("/api/measured", "What was measured beside the plan on the desk", MeasuredView.class, this::view);
        changes(
                routes,
                "add",
                "A piece of a filled sheet or of a recording is handed over",
                MeasuredRequests.Piece.class,
                SiteFilesView.class,
                this::add);
        changes(routes, "remove", "A file is taken away", DeskRequests.Named.class, MeasuredView.class, asked -> {
            refuseWhenTaken();
            site.remove(asked.name());
            return anew();
        });
        changes(routes, "clear", "All files are taken away", DeskRequests.Bare.class, MeasuredView.class, asked -> {
            site.clear();
            inFullUse = Set.of();
            taken = Optional.empty();
            return anew();
        });
        changes(
                routes,
                "circumstances",
                "Where was recorded what, and on which day",
                MeasuredRequests.Circumstances.class,
                MeasuredView.class,
                this::under);
        changes(
                routes,
                "columns",
                "Which columns of the recording are what; kept beside the project",
                MeasuredRequests.ColumnsSaid.class,
                MeasuredView.class,
                this::columns);
        changes(
                routes,
                "confirm",
                "Which loads somebody saw in full use",
                MeasuredRequests.FullUse.class,
                MeasuredView.class,
                this::confirm);
        changes(
                routes,
                "take",
                "The project holds what was measured",
                DeskRequests.Bare.class,
                DeskSheet.class,
                asked -> take());
        changes(
                routes,
                "record",
                "The record of the plant as built is written into a folder beside the project",
                MeasuredRequests.AsBuilt.class,
                AsBuiltView.class,
                this::record);
    }

    /** One at a time, whichever window asks. */
    private <A extends Record, B extends Record> void changes(
            DeskRoutes routes, String path, String meaning, Class<A> asked, Class<B> answered, Function<A, B> answer) {
        routes.asked("/api/measured/" + path, meaning, asked, answered, each -> {
            synchronized (this) {
                return answer.apply(each);
            }
        });
    }

    private SiteFilesView add(MeasuredRequests.Piece piece) {
        refuseWhenTaken();
        site.add(piece);
        told = Optional.empty();
        return new SiteFilesView(site.views());
    }

    private void refuseWhenTaken() {
        if (isTaken()) {
            throw refused("what was handed over is in the project now. Begin another visit first, or undo.");
        }
    }

    private MeasuredView anew() {
        told = Optional.empty();
        return view();
    }

    private MeasuredView under(MeasuredRequests.Circumstances asked) {
        refuseWhenTaken();
        if (!asked.day().isEmpty()) {
            try {
                LocalDate.parse(asked.day());
            } catch (DateTimeParseException e) {
                throw refused("'" + Harmless.shown(asked.day()) + "' is no day. Write it as 2026-03-14.");
            }
        }
        circumstances = asked;
        return anew();
    }

    private MeasuredView columns(MeasuredRequests.ColumnsSaid asked) {
        Map<String, String> headers = new HashMap<>();
        for (MeasuredRequests.ColumnSaid each : asked.columns()) {
            if (headers.put(each.means(), each.header()) != null) {
                throw refused("two columns cannot both be '" + Harmless.shown(each.means()) + "'.");
            }
        }
        jobs.keepColumns(files.project(), SaidColumns.of(headers, asked.unitsPerSecond(), asked.ampsPerUnit()));
        return anew();
    }

    private MeasuredView confirm(MeasuredRequests.FullUse asked) {
        refuseWhenTaken();
        inFullUse = Set.copyOf(asked.loads());
        return anew();
    }

    private DeskSheet take() {
        refuseWhenTaken();
        SiteReading.Told now = told();
        CommissionResult result = now.sound();
        Project measured = result.plant().refitted().project();
        if (result.plant().refitted().changes().isEmpty()) {
            throw refused(
                    "no reading of a load's current was handed over, so there is nothing to take into the project.");
        }
        desk.change("what was measured", state -> {
            if (state.state().project() != now.of().project()) {
                throw refused("the project has changed meanwhile. Look at what was measured once more.");
            }
            return state.state().under(measured, state.state().notes());
        });
        taken = Optional.of(measured);
        return desk.sheet();
    }

    /** Of the plant as it was measured, whether that is in the project by now or not. */
    private AsBuiltView record(MeasuredRequests.AsBuilt asked) {
        String folder = Branches.named(asked.name());
        SiteReading.Told now = told();
        DocumentSet usual = DocumentSet.into(files.folder().resolve(folder));
        DocumentSet wanted = usual.withImprint(asked.revision(), usual.date()).withOverwriting(asked.overwrites());
        List<String> written = site.read(laid -> reading.record(now.of(), laid, circumstances, inFullUse, wanted));
        return new AsBuiltView(folder, written);
    }

    /** Whether the project holds it, whatever else was changed there since. */
    private boolean isTaken() {
        if (taken.isEmpty()) {
            return false;
        }
        Map<String, List<MeasuredValue>> held =
                desk.judged().state().project().loads().stream().collect(Collectors.toMap(Load::id, Load::measured));
        return taken.get().loads().stream()
                .filter(each -> !each.measured().isEmpty())
                .allMatch(each -> held.getOrDefault(each.id(), each.measured()).equals(each.measured()));
    }

    private synchronized MeasuredView view() {
        JudgedState now = desk.judged();
        Optional<SiteReading.Told> says = site.isEmpty() ? Optional.empty() : Optional.of(told());
        Optional<FoundView> found =
                says.flatMap(it -> it.result().map(each -> new ShownMeasured(each, it.notes(), inFullUse).view()));
        return new MeasuredView(
                desk.revision(),
                site.isEmpty() ? "empty" : isTaken() ? "taken" : "open",
                site.views(),
                says.flatMap(SiteReading.Told::columns),
                now.layout().distribution().points().stream()
                        .map(Distribution.Point::id)
                        .toList(),
                now.state().project().systems().stream().map(SwitchedSystem::id).toList(),
                circumstances.at(),
                circumstances.system(),
                circumstances.day(),
                circumstances.use(),
                says.map(SiteReading.Told::problems).orElse(List.of()),
                found);
    }

    /** What the files say of the plan on the desk; once it is in the project, of the plan as it was before. */
    private SiteReading.Told told() {
        if (site.isEmpty()) {
            throw refused("nothing from the site was handed over yet.");
        }
        DeskState now = desk.judged().state();
        boolean isKnown = told.filter(each -> isTaken()
                        || each.of().project() == now.project() && each.of().plan() == now.plan())
                .isPresent();
        if (!isKnown) {
            told = Optional.of(site.read(laid -> reading.told(now, laid, circumstances, inFullUse)));
        }
        return told.orElseThrow();
    }

    private static JobFailed refused(String why) {
        return new JobFailed(JobFailed.Reason.REQUEST, why);
    }
}
