package evenrise.model.file;

import com.fasterxml.classmate.ResolvedType;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.github.victools.jsonschema.generator.CustomDefinition;
import com.github.victools.jsonschema.generator.CustomDefinitionProviderV2;
import com.github.victools.jsonschema.generator.FieldScope;
import com.github.victools.jsonschema.generator.MemberScope;
import com.github.victools.jsonschema.generator.Option;
import com.github.victools.jsonschema.generator.OptionPreset;
import com.github.victools.jsonschema.generator.SchemaGenerationContext;
import com.github.victools.jsonschema.generator.SchemaGenerator;
import com.github.victools.jsonschema.generator.SchemaGeneratorConfigBuilder;
import com.github.victools.jsonschema.generator.SchemaGeneratorConfigPart;
import com.github.victools.jsonschema.generator.SchemaVersion;
import evenrise.model.contract.BareList;
import evenrise.model.contract.Field;
import evenrise.model.contract.Words;
import evenrise.model.event.EventScript;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * JSON Schema (draft 2020-12) of the files, generated from the records, so that editors complete and check. What needs
 * more than one value to judge (references, circles) only the reader checks.
 */
public final class Schemas {
    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private Schemas() {}

    /** Text of the project file's schema, with a line break at its end. */
    public static String project() {
        return text(Project.class, "evenrise project", Project.FORMAT);
    }

    /** Text of the plan file's schema, with a line break at its end. */
    public static String plan() {
        return text(Plan.class, "evenrise plan", Plan.FORMAT);
    }

    /** Text of the script file's schema, with a line break at its end. */
    public static String script() {
        return text(EventScript.class, "evenrise script", EventScript.FORMAT);
    }

    private static String text(Class<? extends Record> type, String title, String format) {
        ObjectNode schema = new SchemaGenerator(config(format).build()).generateSchema(type);
        allowFreeKeys(schema);
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

    private static SchemaGeneratorConfigBuilder config(String format) {
        SchemaGeneratorConfigBuilder config = new SchemaGeneratorConfigBuilder(
                        SchemaVersion.DRAFT_2020_12, OptionPreset.PLAIN_JSON)
                .with(Option.DEFINITIONS_FOR_ALL_OBJECTS, Option.FORBIDDEN_ADDITIONAL_PROPERTIES_BY_DEFAULT);
        config.forTypesInGeneral().withCustomDefinitionProvider(new ObjectOrList());
        config.forTypesInGeneral().withCustomDefinitionProvider((type, context) -> {
            if (!type.getErasedType().isEnum()) {
                return null;
            }
            ObjectNode words = MAPPER.createObjectNode().put("type", "string");
            Expected.words(type.getErasedType()).forEach(words.putArray("enum")::add);
            return new CustomDefinition(words);
        });
        config.forTypesInGeneral().withPropertySorter(Comparator.comparingInt(Schemas::position));
        SchemaGeneratorConfigPart<FieldScope> fields = config.forFields();
        fields.withPropertyNameOverrideResolver(scope -> Words.key(scope.getDeclaredName()));
        fields.withTargetTypeOverridesResolver(Schemas::withoutOptional);
        fields.withDescriptionResolver(
                scope -> scope.isFakeContainerItemScope() ? null : of(scope).meaning());
        fields.withRequiredCheck(
                scope -> !of(scope).optional() && of(scope).byDefault().isEmpty());
        fields.withNullableCheck(
                scope -> !scope.isFakeContainerItemScope() && of(scope).optional());
        fields.withDefaultResolver(scope -> scope.isFakeContainerItemScope()
                ? null
                : of(scope).byDefault().isEmpty() ? null : parsed(of(scope).byDefault()));
        fields.withNumberInclusiveMinimumResolver(scope -> bound(scope, Field::min));
        fields.withNumberExclusiveMinimumResolver(scope -> bound(scope, Field::above));
        fields.withNumberInclusiveMaximumResolver(scope -> bound(scope, Field::max));
        fields.withStringMinLengthResolver(scope -> fewest(scope, String.class));
        fields.withStringPatternResolver(scope -> fewest(scope, String.class) == null ? null : "\\S");
        fields.withArrayMinItemsResolver(scope -> fewest(scope, List.class));
        fields.withArrayUniqueItemsResolver(
                scope -> !scope.isFakeContainerItemScope() && of(scope).distinct() ? true : null);
        fields.withEnumResolver(scope -> scope.getDeclaredName().equals("format") ? List.of(format) : null);
        return config;
    }

    /** Records that a bare list may stand for. */
    private static final class ObjectOrList implements CustomDefinitionProviderV2 {
        @Override
        public CustomDefinition provideCustomSchemaDefinition(ResolvedType type, SchemaGenerationContext context) {
            BareList bare = type.getErasedType().getAnnotation(BareList.class);
            if (bare == null) {
                return null;
            }
            ObjectNode object = context.createStandardDefinition(type, this);
            JsonNode list = ((ObjectNode) object.get("properties")).remove(Words.key(bare.value()));
            ((ObjectNode) list).put("type", "array");
            ObjectNode either = MAPPER.createObjectNode();
            either.putArray("anyOf").add(list).add(object);
            return new CustomDefinition(either);
        }
    }

    /** Optional and its kin say only that a field may be absent. */
    private static List<ResolvedType> withoutOptional(FieldScope scope) {
        Type declared = component(scope).getGenericType();
        Type inner = RecordShape.withoutOptional(declared);
        return scope.isFakeContainerItemScope() || inner == declared
                ? null
                : List.of(scope.getContext().resolve(inner));
    }

    private static Field of(FieldScope scope) {
        return component(scope).getAnnotation(Field.class);
    }

    private static RecordComponent component(FieldScope scope) {
        return scope.getRawMember().getDeclaringClass().getRecordComponents()[position(scope)];
    }

    /** Place of a component in its record. */
    private static int position(MemberScope<?, ?> scope) {
        return Arrays.stream(scope.getRawMember().getDeclaringClass().getRecordComponents())
                .map(RecordComponent::getName)
                .toList()
                .indexOf(scope.getRawMember().getName());
    }

    private static BigDecimal bound(FieldScope scope, ToDoubleFunction<Field> of) {
        double bound = of.applyAsDouble(of(scope));
        Class<?> type = scope.getType().getErasedType();
        boolean number = Number.class.isAssignableFrom(type) || type.isPrimitive() && type != boolean.class;
        return number && Double.isFinite(bound) ? new BigDecimal(Numbers.shortest(bound)) : null;
    }

    private static Integer fewest(FieldScope scope, Class<?> type) {
        boolean applies = !scope.isFakeContainerItemScope()
                && type.isAssignableFrom(scope.getType().getErasedType());
        return applies ? Optional.of(of(scope).atLeast()).filter(it -> it > 0).orElse(null) : null;
    }

    private static JsonNode parsed(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
