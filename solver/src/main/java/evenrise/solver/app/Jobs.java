package evenrise.solver.app;

import evenrise.model.intake.RecorderColumns;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.report.PlanDifferenceText;
import evenrise.solver.sample.Sample;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The door for programs: each job is a request that becomes a result. Jobs share nothing, so that several may run at once.
 *
 * @since 0.1.0
 */
public final class Jobs {
    private final PlannerSource planners;

    /** Jobs with the engine of this program. */
    public Jobs() {
        this(PlannerSource.ENGINE);
    }

    Jobs(PlannerSource planners) {
        this.planners = planners;
    }

    /** Version of this program, as it signs plans. */
    public static String version() {
        return ProgramVersion.ofThisProgram();
    }

    /** Finds a plan, and writes it and its documents where that is asked for. */
    public PlanResult plan(PlanRequest request) {
        return plan(request, JobControl.NONE);
    }

    /** @see #plan(PlanRequest) */
    public PlanResult plan(PlanRequest request, JobControl control) {
        return watched(
                control,
                watch -> request.manySeeds()
                        .map(manySeeds -> new SeedsJob(planners, request, manySeeds, control, watch).run())
                        .orElseGet(() -> new PlanJob(planners, request, control, watch).run()));
    }

    /** Judges a plan from its assignments alone. */
    public AuditResult audit(AuditRequest request) {
        return audit(request, JobControl.NONE);
    }

    /** @see #audit(AuditRequest) */
    public AuditResult audit(AuditRequest request, JobControl control) {
        return watched(control, watch -> new AuditJob(watch, control.cancellation()).run(request));
    }

    /** Shows where one more load could go. */
    public Listing nextLoad(NextLoadRequest request) {
        return watched(JobControl.NONE, watch -> new AuditJob(watch, Cancellation.NEVER).nextLoad(request));
    }

    /** Lists what a project says of its loads and nobody stated. */
    public Listing guessed(AuditRequest request) {
        return watched(JobControl.NONE, watch -> new AuditJob(watch, Cancellation.NEVER).guessed(request));
    }

    /** Proposes what inrush is usual for the gear of loads that state none. */
    public Listing typicalInrush(TypicalInrushRequest request) {
        return watched(JobControl.NONE, watch -> new AuditJob(watch, Cancellation.NEVER).typicalInrush(request));
    }

    /** Says what every other place of a load would break or cost. */
    public ExplainResult explain(ExplainRequest request) {
        return explain(request, JobControl.NONE);
    }

    /** @see #explain(ExplainRequest) */
    public ExplainResult explain(ExplainRequest request, JobControl control) {
        return watched(control, watch -> new ExplainJob(watch).load(request));
    }

    /** Says what makes a plan's peak, and which single changes lower it. */
    public Listing explainPeak(AuditRequest request, JobControl control) {
        return watched(control, watch -> new ExplainJob(watch).peak(request));
    }

    /**
     * Says what a rule asks, where a plan breaks it, and what comes nearest to its limit.
     *
     * @param rule its id, as docs/rules.md has it
     */
    public Listing explainRule(AuditRequest request, String rule) {
        return watched(JobControl.NONE, watch -> new ExplainJob(watch).rule(request, rule));
    }

    /** Says what would become of a plan if something of its project were otherwise; writes nothing. */
    public WhatIfResult whatIf(WhatIfRequest request, JobControl control) {
        return watched(control, watch -> new WhatIfJob(planners, request, control, watch).run());
    }

    /** Proposes the least standard breakers, cables, feeders, transformers and interrupting ratings; writes nothing. */
    public SizeResult size(SizeRequest request, JobControl control) {
        return watched(control, watch -> new SizeJob(watch).run(request));
    }

    /** Says what is another in one plan than in an earlier one, panel by panel. */
    public Listing diff(DiffRequest request) {
        return watched(JobControl.NONE, watch -> {
            Plan earlier = Inputs.plan(request.earlier(), watch.notes());
            Plan later = Inputs.plan(request.later(), watch.notes());
            return style -> PlanDifferenceText.lines(earlier, later, style.isFull(), style.paint());
        });
    }

    /** Pins parts of a plan in its project, or sets them free, and writes the project. */
    public PinResult pin(PinRequest request) {
        return watched(JobControl.NONE, watch -> new PinJob(request, watch).run());
    }

    /** Writes a project for others. */
    public ExportResult export(ExportRequest request) {
        return export(request, JobControl.NONE);
    }

    /** @see #export(ExportRequest) */
    public ExportResult export(ExportRequest request, JobControl control) {
        return watched(control, watch -> new ExportJob(request, watch).run());
    }

    /** Takes in tables that were exported from a project and edited, and writes it where anything is another. */
    public TakeInResult takeIn(TakeInRequest request) {
        return takeIn(request, JobControl.NONE);
    }

    /** @see #takeIn(TakeInRequest) */
    public TakeInResult takeIn(TakeInRequest request, JobControl control) {
        return watched(control, watch -> new TakeInJob(request, watch).run());
    }

    /** Writes the documents of a plan. */
    public ReportResult report(ReportRequest request) {
        return report(request, JobControl.NONE);
    }

    /** @see #report(ReportRequest) */
    public ReportResult report(ReportRequest request, JobControl control) {
        return watched(control, watch -> new ReportJob(watch, control.cancellation()).run(request));
    }

    /** Draws the documents of a plan to be looked at before they are written; nothing is written yet. */
    public DrawnDocuments draw(ReportRequest request, JobControl control) {
        return watched(control, watch -> new ReportJob(watch, control.cancellation()).draw(request));
    }

    /** Plays what may happen on a plan. */
    public RehearseResult rehearse(RehearseRequest request) {
        return rehearse(request, JobControl.NONE);
    }

    /** @see #rehearse(RehearseRequest) */
    public RehearseResult rehearse(RehearseRequest request, JobControl control) {
        return watched(control, watch -> new RehearseJob(watch).run(request));
    }

    /** Draws switch-ons by chance, for the percentiles of peaks and dips. */
    public TrialsResult trials(TrialsRequest request) {
        return trials(request, JobControl.NONE);
    }

    /** @see #trials(TrialsRequest) */
    public TrialsResult trials(TrialsRequest request, JobControl control) {
        return watched(control, watch -> new RehearseJob(watch).trials(request));
    }

    /** Cures a plan as built with few changes, and writes the front, its plans and the work. */
    public ReworkResult rework(ReworkRequest request) {
        return rework(request, JobControl.NONE);
    }

    /** @see #rework(ReworkRequest) */
    public ReworkResult rework(ReworkRequest request, JobControl control) {
        return watched(control, watch -> new ReworkJob(planners, request, control, watch).run());
    }

    /** Searches for cures of a plan as built; what comes of it is looked at before any of it is written. */
    public ReworkDraft draftRework(ReworkRequest request, JobControl control) {
        return watched(control, watch -> new ReworkJob(planners, request, control, watch).draft());
    }

    /** Compares numbers of panels and boards, and writes each scenario's project and plan. */
    public CompareResult compare(CompareRequest request) {
        return compare(request, JobControl.NONE);
    }

    /** @see #compare(CompareRequest) */
    public CompareResult compare(CompareRequest request, JobControl control) {
        return watched(control, watch -> new CompareJob(request, control, watch).run());
    }

    /** Finds many plans in one run, each once, and writes what they come to. */
    public PortfolioResult portfolio(PortfolioRequest request, JobControl control) {
        return watched(control, watch -> new PortfolioJob(planners, request, control, watch).run());
    }

    /** Shows alternates side by side for a client, and writes page, sheet and table. */
    public OfferResult offer(OfferRequest request) {
        return drawOffer(request).write(request.folder());
    }

    /** Draws alternates side by side, to be looked at before they are written. */
    public DrawnOffer drawOffer(OfferRequest request) {
        return watched(JobControl.NONE, watch -> OfferJob.drawn(request, watch));
    }

    /** Takes jobs of others until it is cancelled. */
    public void work(WorkerRequest request, JobControl control) {
        watched(control, watch -> {
            new WorkerJob(planners, control, watch).run(request);
            return request;
        });
    }

    /** Makes keys for machines that are to take part, and the authority that they are known by. */
    public void makeKeys(KeysRequest request) {
        WorkerJob.keys(request);
    }

    /** Tells a recorded start beside a plan. */
    public ObserveResult observe(ObserveRequest request, JobControl control) {
        return watched(control, watch -> new ObserveJob(watch).run(request));
    }

    /** Whether a file is a filled commissioning sheet, a workbook with one, readings saved at the panel or a list of readings. */
    public boolean isFilledSheet(Path file) {
        return watched(JobControl.NONE, watch -> SheetTables.isOne(file));
    }

    /**
     * The columns of a recorded table, and how each is read; none where the file says itself what is in it.
     *
     * @param project beside whose file it is kept what was said of columns
     */
    public RecordedColumnsResult recordedColumns(Path recording, Path project) {
        return watched(JobControl.NONE, watch -> RecordedColumnsResult.of(recording, project, watch.notes()));
    }

    /** What is kept beside a project's file of the columns of recordings. */
    public List<RecorderColumns> keptColumns(Path project) {
        return watched(
                JobControl.NONE,
                watch -> RecorderBook.besides(Optional.of(project), watch.notes())
                        .with(Optional.empty()));
    }

    /** Keeps beside a project's file which columns of recordings with such headers are what. */
    public void keepColumns(Path project, RecorderColumns said) {
        watched(JobControl.NONE, watch -> {
            RecorderBook.besides(Optional.of(project), watch.notes()).keep(said);
            return said;
        });
    }

    /** Tells a plant as measured beside its plan, and takes what was measured into its project. */
    public CommissionResult commission(CommissionRequest request, JobControl control) {
        return watched(control, watch -> new CommissionJob(request, watch).run());
    }

    /** Lists what a project consists of, with prices. */
    public BillResult bill(BillRequest request) {
        return watched(JobControl.NONE, watch -> BillJob.run(request, watch));
    }

    /** Makes a project of an equipment list, and writes it unless rows are bad. */
    public ImportResult importList(ImportRequest request) {
        return importList(request, JobControl.NONE);
    }

    /** @see #importList(ImportRequest) */
    public ImportResult importList(ImportRequest request, JobControl control) {
        return watched(control, watch -> ImportJob.run(request, watch));
    }

    /**
     * Makes a project of each sheet of a workbook that holds a list: alternates, which are not added up.
     *
     * @param request whose target is the folder for the projects
     */
    public ImportAlternatesResult importAlternates(ImportRequest request, JobControl control) {
        return watched(control, watch -> ImportJob.alternates(request, watch));
    }

    /** Writes a blank equipment list, a workbook or a table of values by the file's ending. */
    public void template(Path file) {
        ImportJob.template(file);
    }

    /**
     * Writes a project's prices as a table that other projects can take, a workbook or a table of values by its ending.
     *
     * @param project with a catalogue; empty for rows that only show how a table is filled in
     */
    public void prices(Optional<Source> project, Path file) {
        watched(JobControl.NONE, watch -> {
            SharedPrices.write(
                    project.map(source ->
                            Inputs.project(source, watch.notes()).value().orElseThrow()),
                    file);
            return file;
        });
    }

    /**
     * A project with the prices of a table in the place of its own; the listener is told what of the table does not meet it.
     *
     * @param catalogue .csv or .xlsx
     */
    public Project priced(Source project, Path catalogue, JobControl control) {
        return watched(
                control,
                watch -> SharedPrices.on(
                        Inputs.project(project, watch.notes()).value().orElseThrow(),
                        Optional.of(catalogue),
                        watch.notes()));
    }

    /** Draws an invented venue; a plan of it that keeps every hard rule exists. */
    public Project generate(GenerateRequest request) {
        String name = request.name().orElseGet(() -> Sample.usualName(request.seed(), request.size()));
        return Sample.venue(request.seed(), request.size(), name, request.plant())
                .project();
    }

    private static <T> T watched(JobControl control, Function<Watch, T> job) {
        try (Watch watch = new Watch(control.listener())) {
            return job.apply(watch);
        }
    }
}
