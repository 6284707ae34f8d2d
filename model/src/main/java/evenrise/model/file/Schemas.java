package evenrise.model.file;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.github.victools.jsonschema.generator.SchemaGenerator;
import evenrise.model.event.EventScript;
import evenrise.model.intake.Mapping;
import evenrise.model.intake.Recorders;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.plan.PlanMoves;
import evenrise.model.portfolio.Portfolio;
import evenrise.model.project.Project;
import evenrise.model.project.TitleBlock;
import evenrise.model.readings.SavedReadings;

/**
 * JSON Schema (draft 2020-12) of the files, generated from the records, so that editors complete and check. What needs
 * more than one value to judge (references, circles) only the reader checks.
 */
public final class Schemas {
    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private Schemas() {}

    /** Text of the project file's schema, with a line break at its end. */
    public static String project() {
        ObjectNode schema = schema(false, Project.class, Project.FORMAT);
        GivenSchema.into(schema);
        allowFreeKeys(schema);
        return text(schema, "evenrise project");
    }

    /** Text of the plan file's schema, with a line break at its end. */
    public static String plan() {
        return noted(Plan.class, "evenrise plan", Plan.FORMAT);
    }

    /** Text of the script file's schema, with a line break at its end. */
    public static String script() {
        return noted(EventScript.class, "evenrise script", EventScript.FORMAT);
    }

    /** Text of the schema of a title block, with a line break at its end. */
    public static String title() {
        return noted(TitleBlock.class, "evenrise title block", TitleBlock.FORMAT);
    }

    /** Text of the schema of what was said of recordings, with a line break at its end. */
    public static String recorders() {
        return noted(Recorders.class, "evenrise recorders", Recorders.FORMAT);
    }

    /** Text of the change file's schema, with a line break at its end. */
    public static String moves() {
        return noted(PlanMoves.class, "evenrise moves", PlanMoves.FORMAT);
    }

    /** Text of the readings file's schema, with a line break at its end. */
    public static String readings() {
        return noted(SavedReadings.class, "evenrise readings", SavedReadings.FORMAT);
    }

    /** Text of the mapping file's schema, with a line break at its end. */
    public static String mapping() {
        return noted(Mapping.class, "evenrise mapping", Mapping.FORMAT);
    }

    /** Text of the portfolio file's schema, with a line break at its end. */
    public static String portfolio() {
        return noted(Portfolio.class, "evenrise portfolio", Portfolio.FORMAT);
    }

    /** Text of the schema of the list of files that a run has written, with a line break at its end. */
    public static String files() {
        return text(schema(false, FileManifest.class, FileManifest.FORMAT), "evenrise files");
    }

    /**
     * Text of the schema of a record that is written for other programs: every component stands in it, an empty one as
     * null. It ends with a line break.
     *
     * @param format what its component {@code format} says
     */
    public static String sheet(Class<? extends Record> type, String title, String format) {
        return text(schema(true, type, format), title);
    }

    /**
     * Schema of a record that is sent, on one line, to be put into the description of an interface.
     *
     * @param isAnswer whether every component stands in it, an empty one as null
     */
    public static String part(Class<? extends Record> type, boolean isAnswer) {
        ObjectNode schema = schema(isAnswer, type, "");
        schema.remove("$schema");
        // What it refers to is within itself, wherever it stands.
        schema.put("$id", "urn:evenrise:" + type.getSimpleName());
        return schema.toString();
    }

    /** Of a file that people write, and may note in what they like. */
    private static String noted(Class<? extends Record> type, String title, String format) {
        ObjectNode schema = schema(false, type, format);
        allowFreeKeys(schema);
        return text(schema, title);
    }

    private static ObjectNode schema(boolean isSheet, Class<? extends Record> type, String format) {
        return new SchemaGenerator(new SchemaRules(isSheet).config(format).build()).generateSchema(type);
    }

    private static String text(ObjectNode schema, String title) {
        schema.put("title", title);
        schema.put("$comment", String.join(" ", Cautions.ALL));
        try {
            return MAPPER.writeValueAsString(schema).replace("\r\n", "\n") + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Every object that takes no other keys takes those that are free. */
    private static void allowFreeKeys(JsonNode schema) {
        if (schema.path("additionalProperties").isBoolean()) {
            ((ObjectNode) schema)
                    .putObject("patternProperties")
                    .putObject(SideNotes.FREE_KEYS)
                    .put("description", "Yours: kept when a project is written anew, and never read");
        }
        schema.forEach(Schemas::allowFreeKeys);
    }
}
