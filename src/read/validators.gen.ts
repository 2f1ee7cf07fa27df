// Made from rules/schema by `npm run types`. Do not edit.
// @ts-nocheck
import type { ValidateFunction } from 'ajv/dist/2020.js';
import { equal, ucs2length } from './validator-helpers.js';

const of_card = validate20;
const schema31 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"card.json","title":"Card","description":"A wall card: one page in large type for the place where work happens. It restates rules and adds none.","type":"object","additionalProperties":false,"required":["kind","id","title","places","points","call"],"properties":{"kind":{"const":"card","description":"The kind of document; it picks this schema."},"id":{"$ref":"defs.json#/$defs/id"},"title":{"$ref":"defs.json#/$defs/label","description":"Its heading. On the card of a machine the machine's name stands before it."},"places":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Zones in which it hangs: terms of the domain zone. The card of a machine hangs beside it."},"machine":{"$ref":"defs.json#/$defs/id","description":"Machine kind: one card a machine of this kind."},"order":{"type":"integer","minimum":1,"maximum":99,"description":"Place among the cards: lower comes first (default 50)."},"only-when":{"$ref":"defs.json#/$defs/condition","description":"Printed only for clinics where this holds."},"caution":{"type":"object","additionalProperties":false,"required":["say","from"],"properties":{"say":{"$ref":"defs.json#/$defs/text"},"from":{"type":"array","items":{"$ref":"defs.json#/$defs/origin"},"minItems":1,"uniqueItems":true,"description":"The steps, rules, tasks, limits or procedures that it restates. It is printed where all of them are in force."}},"description":"What can hurt someone, in a box."},"choose":{"type":"object","additionalProperties":false,"required":["decision","loads"],"properties":{"decision":{"$ref":"defs.json#/$defs/id","description":"A choice among programs."},"loads":{"type":"array","minItems":1,"items":{"type":"object","additionalProperties":false,"required":["say","given"],"properties":{"say":{"$ref":"defs.json#/$defs/text","description":"The load in a few words."},"given":{"type":"array","items":{"$ref":"defs.json#/$defs/situation"},"minItems":1,"description":"What is loaded: one situation, or several that all have to get the same program."}}},"description":"Loads that come every day, the widest first. One is printed with the program of this card's machine that is sure to do, unless the lines above it say so already."}},"description":"Which program usual loads need."},"points":{"type":"array","minItems":2,"maxItems":12,"items":{"type":"object","additionalProperties":false,"required":["id","say","from"],"properties":{"id":{"$ref":"defs.json#/$defs/id","description":"Unique on its card."},"say":{"$ref":"defs.json#/$defs/text","description":"One short imperative."},"from":{"type":"array","items":{"$ref":"defs.json#/$defs/origin"},"minItems":1,"uniqueItems":true,"description":"The steps, rules, tasks, limits or procedures that it restates. It is printed where all of them are in force."}}}},"stop":{"type":"object","additionalProperties":false,"required":["say","from"],"properties":{"say":{"$ref":"defs.json#/$defs/text"},"from":{"type":"array","items":{"$ref":"defs.json#/$defs/origin"},"minItems":1,"uniqueItems":true,"description":"The steps, rules, tasks, limits or procedures that it restates. It is printed where all of them are in force."}},"description":"When to stop the work."},"call":{"type":"array","minItems":1,"items":{"type":"object","additionalProperties":false,"required":["when","whom"],"properties":{"when":{"$ref":"defs.json#/$defs/text"},"whom":{"type":"string","pattern":"^(?:contact|role):[a-z0-9]+(?:[-.][a-z0-9]+)*$","maxLength":90,"description":"A contact of the clinic or a role: `contact:service`, `role:infection-lead`."}}},"description":"Whom to call, and when."}}};
const schema33 = {"type":"string","pattern":"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$","maxLength":80,"description":"Kebab-case, dotted by topic: `holding.longest-dry-wait`."};
const schema34 = {"type":"string","minLength":1,"maxLength":120,"description":"A short name, no full stop."};
const schema41 = {"type":"string","minLength":1,"maxLength":2000,"description":"A sentence or a few, in inline Markdown. References are links with an empty text: `[](limit:id)`."};
const schema42 = {"type":"string","pattern":"^(?:step|rule|task|limit|procedure):[a-z0-9]+(?:[-./][a-z0-9]+)*$","maxLength":170,"description":"What a line restates: `step:run-washer/start`, `rule:waiting/in-time`, `task:care.washer-start`, `limit:hands.wash`, `procedure:run-washer` for its cautions."};
const func1 = Object.prototype.hasOwnProperty;
const func2 = ucs2length;
const func0 = equal;
const pattern4 = new RegExp("^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$", "u");
const pattern8 = new RegExp("^(?:step|rule|task|limit|procedure):[a-z0-9]+(?:[-./][a-z0-9]+)*$", "u");
const pattern14 = new RegExp("^(?:contact|role):[a-z0-9]+(?:[-.][a-z0-9]+)*$", "u");
const schema37 = {"type":"object","description":"A map is all of these. `all`, `any` and `not` nest; every other key is a fact id with a test.","minProperties":1,"properties":{"all":{"type":"array","items":{"$ref":"defs.json#/$defs/condition"},"minItems":1},"any":{"type":"array","items":{"$ref":"defs.json#/$defs/condition"},"minItems":1},"not":{"$ref":"defs.json#/$defs/condition"}},"additionalProperties":{"$ref":"defs.json#/$defs/test"}};
const schema38 = {"type":["string","boolean","object"],"description":"What a fact must be. A plain value means equal to it.","additionalProperties":false,"minProperties":1,"properties":{"one-of":{"type":"array","items":{"type":["string","boolean"]},"minItems":1,"description":"For an enum or an answer: one of these."},"any-of":{"type":"array","items":{"type":"string"},"minItems":1,"description":"For a set: at least one of these is in it."},"all-of":{"type":"array","items":{"type":"string"},"minItems":1,"description":"For a set: all of these are in it."},"none-of":{"type":"array","items":{"type":"string"},"minItems":1,"description":"For a set or an enum: none of these."},"at-least":{"$ref":"defs.json#/$defs/operand"},"at-most":{"$ref":"defs.json#/$defs/operand"},"above":{"$ref":"defs.json#/$defs/operand"},"below":{"$ref":"defs.json#/$defs/operand"},"between":{"type":"array","items":{"$ref":"defs.json#/$defs/operand"},"minItems":2,"maxItems":2,"description":"Both ends belong to it."}}};
const schema39 = {"type":["string","number","object"],"additionalProperties":false,"required":["limit"],"properties":{"limit":{"$ref":"defs.json#/$defs/id","description":"Id of a limit; its value on the date asked for is used."}},"description":"A quantity, a date, a count, or a limit by id."};

function validate24(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate24.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(((typeof data !== "string") && (!((typeof data == "number") && (isFinite(data))))) && (!(data && typeof data == "object" && !Array.isArray(data)))){
const err0 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: schema39.type},message:"must be string,number,object",schema:schema39.type,parentSchema:schema39,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.limit === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "limit"},message:"must have required property '"+"limit"+"'",schema:schema39.required,parentSchema:schema39,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!(key0 === "limit")){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema39,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.limit !== undefined){
let data0 = data.limit;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err3 = {instancePath:instancePath+"/limit",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(!pattern4.test(data0)){
const err4 = {instancePath:instancePath+"/limit",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
else {
const err5 = {instancePath:instancePath+"/limit",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
}
validate24.errors = vErrors;
return errors === 0;
}
validate24.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate23(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate23.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(((typeof data !== "string") && (typeof data !== "boolean")) && (!(data && typeof data == "object" && !Array.isArray(data)))){
const err0 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: schema38.type},message:"must be string,boolean,object",schema:schema38.type,parentSchema:schema38,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(Object.keys(data).length < 1){
const err1 = {instancePath,schemaPath:"#/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema38,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!(func1.call(schema38.properties, key0))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema38,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data["one-of"] !== undefined){
let data0 = data["one-of"];
if(Array.isArray(data0)){
if(data0.length < 1){
const err3 = {instancePath:instancePath+"/one-of",schemaPath:"#/properties/one-of/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema38.properties["one-of"],data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
const len0 = data0.length;
for(let i0=0; i0<len0; i0++){
let data1 = data0[i0];
if((typeof data1 !== "string") && (typeof data1 !== "boolean")){
const err4 = {instancePath:instancePath+"/one-of/" + i0,schemaPath:"#/properties/one-of/items/type",keyword:"type",params:{type: schema38.properties["one-of"].items.type},message:"must be string,boolean",schema:schema38.properties["one-of"].items.type,parentSchema:schema38.properties["one-of"].items,data:data1};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
}
else {
const err5 = {instancePath:instancePath+"/one-of",schemaPath:"#/properties/one-of/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema38.properties["one-of"].type,parentSchema:schema38.properties["one-of"],data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
if(data["any-of"] !== undefined){
let data2 = data["any-of"];
if(Array.isArray(data2)){
if(data2.length < 1){
const err6 = {instancePath:instancePath+"/any-of",schemaPath:"#/properties/any-of/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema38.properties["any-of"],data:data2};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
const len1 = data2.length;
for(let i1=0; i1<len1; i1++){
let data3 = data2[i1];
if(typeof data3 !== "string"){
const err7 = {instancePath:instancePath+"/any-of/" + i1,schemaPath:"#/properties/any-of/items/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema38.properties["any-of"].items.type,parentSchema:schema38.properties["any-of"].items,data:data3};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
}
else {
const err8 = {instancePath:instancePath+"/any-of",schemaPath:"#/properties/any-of/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema38.properties["any-of"].type,parentSchema:schema38.properties["any-of"],data:data2};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data["all-of"] !== undefined){
let data4 = data["all-of"];
if(Array.isArray(data4)){
if(data4.length < 1){
const err9 = {instancePath:instancePath+"/all-of",schemaPath:"#/properties/all-of/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema38.properties["all-of"],data:data4};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
const len2 = data4.length;
for(let i2=0; i2<len2; i2++){
let data5 = data4[i2];
if(typeof data5 !== "string"){
const err10 = {instancePath:instancePath+"/all-of/" + i2,schemaPath:"#/properties/all-of/items/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema38.properties["all-of"].items.type,parentSchema:schema38.properties["all-of"].items,data:data5};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
}
else {
const err11 = {instancePath:instancePath+"/all-of",schemaPath:"#/properties/all-of/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema38.properties["all-of"].type,parentSchema:schema38.properties["all-of"],data:data4};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data["none-of"] !== undefined){
let data6 = data["none-of"];
if(Array.isArray(data6)){
if(data6.length < 1){
const err12 = {instancePath:instancePath+"/none-of",schemaPath:"#/properties/none-of/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema38.properties["none-of"],data:data6};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
const len3 = data6.length;
for(let i3=0; i3<len3; i3++){
let data7 = data6[i3];
if(typeof data7 !== "string"){
const err13 = {instancePath:instancePath+"/none-of/" + i3,schemaPath:"#/properties/none-of/items/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema38.properties["none-of"].items.type,parentSchema:schema38.properties["none-of"].items,data:data7};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
}
else {
const err14 = {instancePath:instancePath+"/none-of",schemaPath:"#/properties/none-of/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema38.properties["none-of"].type,parentSchema:schema38.properties["none-of"],data:data6};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
if(data["at-least"] !== undefined){
if(!(validate24(data["at-least"], {instancePath:instancePath+"/at-least",parentData:data,parentDataProperty:"at-least",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
errors = vErrors.length;
}
}
if(data["at-most"] !== undefined){
if(!(validate24(data["at-most"], {instancePath:instancePath+"/at-most",parentData:data,parentDataProperty:"at-most",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
errors = vErrors.length;
}
}
if(data.above !== undefined){
if(!(validate24(data.above, {instancePath:instancePath+"/above",parentData:data,parentDataProperty:"above",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
errors = vErrors.length;
}
}
if(data.below !== undefined){
if(!(validate24(data.below, {instancePath:instancePath+"/below",parentData:data,parentDataProperty:"below",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
errors = vErrors.length;
}
}
if(data.between !== undefined){
let data12 = data.between;
if(Array.isArray(data12)){
if(data12.length > 2){
const err15 = {instancePath:instancePath+"/between",schemaPath:"#/properties/between/maxItems",keyword:"maxItems",params:{limit: 2},message:"must NOT have more than 2 items",schema:2,parentSchema:schema38.properties.between,data:data12};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(data12.length < 2){
const err16 = {instancePath:instancePath+"/between",schemaPath:"#/properties/between/minItems",keyword:"minItems",params:{limit: 2},message:"must NOT have fewer than 2 items",schema:2,parentSchema:schema38.properties.between,data:data12};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
const len4 = data12.length;
for(let i4=0; i4<len4; i4++){
if(!(validate24(data12[i4], {instancePath:instancePath+"/between/" + i4,parentData:data12,parentDataProperty:i4,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
errors = vErrors.length;
}
}
}
else {
const err17 = {instancePath:instancePath+"/between",schemaPath:"#/properties/between/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema38.properties.between.type,parentSchema:schema38.properties.between,data:data12};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
}
validate23.errors = vErrors;
return errors === 0;
}
validate23.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const wrapper0 = {validate: validate22};

function validate22(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate22.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(Object.keys(data).length < 1){
const err0 = {instancePath,schemaPath:"#/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
for(const key0 in data){
if(!(((key0 === "all") || (key0 === "any")) || (key0 === "not"))){
if(!(validate23(data[key0], {instancePath:instancePath+"/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"),parentData:data,parentDataProperty:key0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate23.errors : vErrors.concat(validate23.errors);
errors = vErrors.length;
}
}
}
if(data.all !== undefined){
let data1 = data.all;
if(Array.isArray(data1)){
if(data1.length < 1){
const err1 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
const len0 = data1.length;
for(let i0=0; i0<len0; i0++){
if(!(wrapper0.validate(data1[i0], {instancePath:instancePath+"/all/" + i0,parentData:data1,parentDataProperty:i0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? wrapper0.validate.errors : vErrors.concat(wrapper0.validate.errors);
errors = vErrors.length;
}
}
}
else {
const err2 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.all.type,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.any !== undefined){
let data3 = data.any;
if(Array.isArray(data3)){
if(data3.length < 1){
const err3 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
const len1 = data3.length;
for(let i1=0; i1<len1; i1++){
if(!(wrapper0.validate(data3[i1], {instancePath:instancePath+"/any/" + i1,parentData:data3,parentDataProperty:i1,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? wrapper0.validate.errors : vErrors.concat(wrapper0.validate.errors);
errors = vErrors.length;
}
}
}
else {
const err4 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.any.type,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.not !== undefined){
if(!(wrapper0.validate(data.not, {instancePath:instancePath+"/not",parentData:data,parentDataProperty:"not",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? wrapper0.validate.errors : vErrors.concat(wrapper0.validate.errors);
errors = vErrors.length;
}
}
}
else {
const err5 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema37.type,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
validate22.errors = vErrors;
return errors === 0;
}
validate22.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const schema45 = {"type":"object","description":"Fact values by fact id.","additionalProperties":{"type":["string","number","boolean","array"],"items":{"type":"string"}},"propertyNames":{"$ref":"defs.json#/$defs/id"}};

function validate32(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate32.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
for(const key0 in data){
const _errs1 = errors;
if(typeof key0 === "string"){
if(func2(key0) > 80){
const err0 = {instancePath,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(!pattern4.test(key0)){
const err1 = {instancePath,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
else {
const err2 = {instancePath,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
var valid0 = _errs1 === errors;
if(!valid0){
const err3 = {instancePath,schemaPath:"#/propertyNames",keyword:"propertyNames",params:{propertyName: key0},message:"property name must be valid",schema:schema45.propertyNames,parentSchema:schema45,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
for(const key1 in data){
let data0 = data[key1];
if((((typeof data0 !== "string") && (!((typeof data0 == "number") && (isFinite(data0))))) && (typeof data0 !== "boolean")) && (!(Array.isArray(data0)))){
const err4 = {instancePath:instancePath+"/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/additionalProperties/type",keyword:"type",params:{type: schema45.additionalProperties.type},message:"must be string,number,boolean,array",schema:schema45.additionalProperties.type,parentSchema:schema45.additionalProperties,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(Array.isArray(data0)){
const len0 = data0.length;
for(let i0=0; i0<len0; i0++){
let data1 = data0[i0];
if(typeof data1 !== "string"){
const err5 = {instancePath:instancePath+"/" + key1.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + i0,schemaPath:"#/additionalProperties/items/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema45.additionalProperties.items.type,parentSchema:schema45.additionalProperties.items,data:data1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
}
}
}
else {
const err6 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema45.type,parentSchema:schema45,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
validate32.errors = vErrors;
return errors === 0;
}
validate32.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate20(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="card.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate20.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema31.required,parentSchema:schema31,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.id === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema31.required,parentSchema:schema31,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data.title === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema31.required,parentSchema:schema31,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
if(data.places === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "places"},message:"must have required property '"+"places"+"'",schema:schema31.required,parentSchema:schema31,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(data.points === undefined){
const err4 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "points"},message:"must have required property '"+"points"+"'",schema:schema31.required,parentSchema:schema31,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(data.call === undefined){
const err5 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "call"},message:"must have required property '"+"call"+"'",schema:schema31.required,parentSchema:schema31,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
for(const key0 in data){
if(!(func1.call(schema31.properties, key0))){
const err6 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema31,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("card" !== data0){
const err7 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "card"},message:"must be equal to constant",schema:"card",parentSchema:schema31.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
if(data.id !== undefined){
let data1 = data.id;
if(typeof data1 === "string"){
if(func2(data1) > 80){
const err8 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(!pattern4.test(data1)){
const err9 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
else {
const err10 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
if(data.title !== undefined){
let data2 = data.title;
if(typeof data2 === "string"){
if(func2(data2) > 120){
const err11 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
if(func2(data2) < 1){
const err12 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
else {
const err13 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
if(data.places !== undefined){
let data3 = data.places;
if(Array.isArray(data3)){
if(data3.length < 1){
const err14 = {instancePath:instancePath+"/places",schemaPath:"#/properties/places/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema31.properties.places,data:data3};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
const len0 = data3.length;
for(let i0=0; i0<len0; i0++){
let data4 = data3[i0];
if(typeof data4 === "string"){
if(func2(data4) > 80){
const err15 = {instancePath:instancePath+"/places/" + i0,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(!pattern4.test(data4)){
const err16 = {instancePath:instancePath+"/places/" + i0,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
else {
const err17 = {instancePath:instancePath+"/places/" + i0,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
let i1 = data3.length;
let j0;
if(i1 > 1){
outer0:
for(;i1--;){
for(j0 = i1; j0--;){
if(func0(data3[i1], data3[j0])){
const err18 = {instancePath:instancePath+"/places",schemaPath:"#/properties/places/uniqueItems",keyword:"uniqueItems",params:{i: i1, j: j0},message:"must NOT have duplicate items (items ## "+j0+" and "+i1+" are identical)",schema:true,parentSchema:schema31.properties.places,data:data3};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
break outer0;
}
}
}
}
}
else {
const err19 = {instancePath:instancePath+"/places",schemaPath:"#/properties/places/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema31.properties.places.type,parentSchema:schema31.properties.places,data:data3};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
if(data.machine !== undefined){
let data5 = data.machine;
if(typeof data5 === "string"){
if(func2(data5) > 80){
const err20 = {instancePath:instancePath+"/machine",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data5};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
if(!pattern4.test(data5)){
const err21 = {instancePath:instancePath+"/machine",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data5};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
else {
const err22 = {instancePath:instancePath+"/machine",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data5};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
if(data.order !== undefined){
let data6 = data.order;
if(!(((typeof data6 == "number") && (!(data6 % 1) && !isNaN(data6))) && (isFinite(data6)))){
const err23 = {instancePath:instancePath+"/order",schemaPath:"#/properties/order/type",keyword:"type",params:{type: "integer"},message:"must be integer",schema:schema31.properties.order.type,parentSchema:schema31.properties.order,data:data6};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
if((typeof data6 == "number") && (isFinite(data6))){
if(data6 > 99 || isNaN(data6)){
const err24 = {instancePath:instancePath+"/order",schemaPath:"#/properties/order/maximum",keyword:"maximum",params:{comparison: "<=", limit: 99},message:"must be <= 99",schema:99,parentSchema:schema31.properties.order,data:data6};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
if(data6 < 1 || isNaN(data6)){
const err25 = {instancePath:instancePath+"/order",schemaPath:"#/properties/order/minimum",keyword:"minimum",params:{comparison: ">=", limit: 1},message:"must be >= 1",schema:1,parentSchema:schema31.properties.order,data:data6};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
}
}
if(data["only-when"] !== undefined){
if(!(validate22(data["only-when"], {instancePath:instancePath+"/only-when",parentData:data,parentDataProperty:"only-when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
if(data.caution !== undefined){
let data8 = data.caution;
if(data8 && typeof data8 == "object" && !Array.isArray(data8)){
if(data8.say === undefined){
const err26 = {instancePath:instancePath+"/caution",schemaPath:"#/properties/caution/required",keyword:"required",params:{missingProperty: "say"},message:"must have required property '"+"say"+"'",schema:schema31.properties.caution.required,parentSchema:schema31.properties.caution,data:data8};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
if(data8.from === undefined){
const err27 = {instancePath:instancePath+"/caution",schemaPath:"#/properties/caution/required",keyword:"required",params:{missingProperty: "from"},message:"must have required property '"+"from"+"'",schema:schema31.properties.caution.required,parentSchema:schema31.properties.caution,data:data8};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
for(const key1 in data8){
if(!((key1 === "say") || (key1 === "from"))){
const err28 = {instancePath:instancePath+"/caution",schemaPath:"#/properties/caution/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key1},message:"must NOT have additional properties",schema:false,parentSchema:schema31.properties.caution,data:data8};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
}
if(data8.say !== undefined){
let data9 = data8.say;
if(typeof data9 === "string"){
if(func2(data9) > 2000){
const err29 = {instancePath:instancePath+"/caution/say",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data9};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
if(func2(data9) < 1){
const err30 = {instancePath:instancePath+"/caution/say",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data9};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
}
else {
const err31 = {instancePath:instancePath+"/caution/say",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data9};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
}
if(data8.from !== undefined){
let data10 = data8.from;
if(Array.isArray(data10)){
if(data10.length < 1){
const err32 = {instancePath:instancePath+"/caution/from",schemaPath:"#/properties/caution/properties/from/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema31.properties.caution.properties.from,data:data10};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
const len1 = data10.length;
for(let i2=0; i2<len1; i2++){
let data11 = data10[i2];
if(typeof data11 === "string"){
if(func2(data11) > 170){
const err33 = {instancePath:instancePath+"/caution/from/" + i2,schemaPath:"defs.json#/$defs/origin/maxLength",keyword:"maxLength",params:{limit: 170},message:"must NOT have more than 170 characters",schema:170,parentSchema:schema42,data:data11};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
if(!pattern8.test(data11)){
const err34 = {instancePath:instancePath+"/caution/from/" + i2,schemaPath:"defs.json#/$defs/origin/pattern",keyword:"pattern",params:{pattern: "^(?:step|rule|task|limit|procedure):[a-z0-9]+(?:[-./][a-z0-9]+)*$"},message:"must match pattern \""+"^(?:step|rule|task|limit|procedure):[a-z0-9]+(?:[-./][a-z0-9]+)*$"+"\"",schema:"^(?:step|rule|task|limit|procedure):[a-z0-9]+(?:[-./][a-z0-9]+)*$",parentSchema:schema42,data:data11};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
}
else {
const err35 = {instancePath:instancePath+"/caution/from/" + i2,schemaPath:"defs.json#/$defs/origin/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema42.type,parentSchema:schema42,data:data11};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
}
let i3 = data10.length;
let j1;
if(i3 > 1){
outer1:
for(;i3--;){
for(j1 = i3; j1--;){
if(func0(data10[i3], data10[j1])){
const err36 = {instancePath:instancePath+"/caution/from",schemaPath:"#/properties/caution/properties/from/uniqueItems",keyword:"uniqueItems",params:{i: i3, j: j1},message:"must NOT have duplicate items (items ## "+j1+" and "+i3+" are identical)",schema:true,parentSchema:schema31.properties.caution.properties.from,data:data10};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
break outer1;
}
}
}
}
}
else {
const err37 = {instancePath:instancePath+"/caution/from",schemaPath:"#/properties/caution/properties/from/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema31.properties.caution.properties.from.type,parentSchema:schema31.properties.caution.properties.from,data:data10};
if(vErrors === null){
vErrors = [err37];
}
else {
vErrors.push(err37);
}
errors++;
}
}
}
else {
const err38 = {instancePath:instancePath+"/caution",schemaPath:"#/properties/caution/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema31.properties.caution.type,parentSchema:schema31.properties.caution,data:data8};
if(vErrors === null){
vErrors = [err38];
}
else {
vErrors.push(err38);
}
errors++;
}
}
if(data.choose !== undefined){
let data12 = data.choose;
if(data12 && typeof data12 == "object" && !Array.isArray(data12)){
if(data12.decision === undefined){
const err39 = {instancePath:instancePath+"/choose",schemaPath:"#/properties/choose/required",keyword:"required",params:{missingProperty: "decision"},message:"must have required property '"+"decision"+"'",schema:schema31.properties.choose.required,parentSchema:schema31.properties.choose,data:data12};
if(vErrors === null){
vErrors = [err39];
}
else {
vErrors.push(err39);
}
errors++;
}
if(data12.loads === undefined){
const err40 = {instancePath:instancePath+"/choose",schemaPath:"#/properties/choose/required",keyword:"required",params:{missingProperty: "loads"},message:"must have required property '"+"loads"+"'",schema:schema31.properties.choose.required,parentSchema:schema31.properties.choose,data:data12};
if(vErrors === null){
vErrors = [err40];
}
else {
vErrors.push(err40);
}
errors++;
}
for(const key2 in data12){
if(!((key2 === "decision") || (key2 === "loads"))){
const err41 = {instancePath:instancePath+"/choose",schemaPath:"#/properties/choose/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key2},message:"must NOT have additional properties",schema:false,parentSchema:schema31.properties.choose,data:data12};
if(vErrors === null){
vErrors = [err41];
}
else {
vErrors.push(err41);
}
errors++;
}
}
if(data12.decision !== undefined){
let data13 = data12.decision;
if(typeof data13 === "string"){
if(func2(data13) > 80){
const err42 = {instancePath:instancePath+"/choose/decision",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data13};
if(vErrors === null){
vErrors = [err42];
}
else {
vErrors.push(err42);
}
errors++;
}
if(!pattern4.test(data13)){
const err43 = {instancePath:instancePath+"/choose/decision",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data13};
if(vErrors === null){
vErrors = [err43];
}
else {
vErrors.push(err43);
}
errors++;
}
}
else {
const err44 = {instancePath:instancePath+"/choose/decision",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data13};
if(vErrors === null){
vErrors = [err44];
}
else {
vErrors.push(err44);
}
errors++;
}
}
if(data12.loads !== undefined){
let data14 = data12.loads;
if(Array.isArray(data14)){
if(data14.length < 1){
const err45 = {instancePath:instancePath+"/choose/loads",schemaPath:"#/properties/choose/properties/loads/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema31.properties.choose.properties.loads,data:data14};
if(vErrors === null){
vErrors = [err45];
}
else {
vErrors.push(err45);
}
errors++;
}
const len2 = data14.length;
for(let i4=0; i4<len2; i4++){
let data15 = data14[i4];
if(data15 && typeof data15 == "object" && !Array.isArray(data15)){
if(data15.say === undefined){
const err46 = {instancePath:instancePath+"/choose/loads/" + i4,schemaPath:"#/properties/choose/properties/loads/items/required",keyword:"required",params:{missingProperty: "say"},message:"must have required property '"+"say"+"'",schema:schema31.properties.choose.properties.loads.items.required,parentSchema:schema31.properties.choose.properties.loads.items,data:data15};
if(vErrors === null){
vErrors = [err46];
}
else {
vErrors.push(err46);
}
errors++;
}
if(data15.given === undefined){
const err47 = {instancePath:instancePath+"/choose/loads/" + i4,schemaPath:"#/properties/choose/properties/loads/items/required",keyword:"required",params:{missingProperty: "given"},message:"must have required property '"+"given"+"'",schema:schema31.properties.choose.properties.loads.items.required,parentSchema:schema31.properties.choose.properties.loads.items,data:data15};
if(vErrors === null){
vErrors = [err47];
}
else {
vErrors.push(err47);
}
errors++;
}
for(const key3 in data15){
if(!((key3 === "say") || (key3 === "given"))){
const err48 = {instancePath:instancePath+"/choose/loads/" + i4,schemaPath:"#/properties/choose/properties/loads/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key3},message:"must NOT have additional properties",schema:false,parentSchema:schema31.properties.choose.properties.loads.items,data:data15};
if(vErrors === null){
vErrors = [err48];
}
else {
vErrors.push(err48);
}
errors++;
}
}
if(data15.say !== undefined){
let data16 = data15.say;
if(typeof data16 === "string"){
if(func2(data16) > 2000){
const err49 = {instancePath:instancePath+"/choose/loads/" + i4+"/say",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data16};
if(vErrors === null){
vErrors = [err49];
}
else {
vErrors.push(err49);
}
errors++;
}
if(func2(data16) < 1){
const err50 = {instancePath:instancePath+"/choose/loads/" + i4+"/say",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data16};
if(vErrors === null){
vErrors = [err50];
}
else {
vErrors.push(err50);
}
errors++;
}
}
else {
const err51 = {instancePath:instancePath+"/choose/loads/" + i4+"/say",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data16};
if(vErrors === null){
vErrors = [err51];
}
else {
vErrors.push(err51);
}
errors++;
}
}
if(data15.given !== undefined){
let data17 = data15.given;
if(Array.isArray(data17)){
if(data17.length < 1){
const err52 = {instancePath:instancePath+"/choose/loads/" + i4+"/given",schemaPath:"#/properties/choose/properties/loads/items/properties/given/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema31.properties.choose.properties.loads.items.properties.given,data:data17};
if(vErrors === null){
vErrors = [err52];
}
else {
vErrors.push(err52);
}
errors++;
}
const len3 = data17.length;
for(let i5=0; i5<len3; i5++){
if(!(validate32(data17[i5], {instancePath:instancePath+"/choose/loads/" + i4+"/given/" + i5,parentData:data17,parentDataProperty:i5,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate32.errors : vErrors.concat(validate32.errors);
errors = vErrors.length;
}
}
}
else {
const err53 = {instancePath:instancePath+"/choose/loads/" + i4+"/given",schemaPath:"#/properties/choose/properties/loads/items/properties/given/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema31.properties.choose.properties.loads.items.properties.given.type,parentSchema:schema31.properties.choose.properties.loads.items.properties.given,data:data17};
if(vErrors === null){
vErrors = [err53];
}
else {
vErrors.push(err53);
}
errors++;
}
}
}
else {
const err54 = {instancePath:instancePath+"/choose/loads/" + i4,schemaPath:"#/properties/choose/properties/loads/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema31.properties.choose.properties.loads.items.type,parentSchema:schema31.properties.choose.properties.loads.items,data:data15};
if(vErrors === null){
vErrors = [err54];
}
else {
vErrors.push(err54);
}
errors++;
}
}
}
else {
const err55 = {instancePath:instancePath+"/choose/loads",schemaPath:"#/properties/choose/properties/loads/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema31.properties.choose.properties.loads.type,parentSchema:schema31.properties.choose.properties.loads,data:data14};
if(vErrors === null){
vErrors = [err55];
}
else {
vErrors.push(err55);
}
errors++;
}
}
}
else {
const err56 = {instancePath:instancePath+"/choose",schemaPath:"#/properties/choose/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema31.properties.choose.type,parentSchema:schema31.properties.choose,data:data12};
if(vErrors === null){
vErrors = [err56];
}
else {
vErrors.push(err56);
}
errors++;
}
}
if(data.points !== undefined){
let data19 = data.points;
if(Array.isArray(data19)){
if(data19.length > 12){
const err57 = {instancePath:instancePath+"/points",schemaPath:"#/properties/points/maxItems",keyword:"maxItems",params:{limit: 12},message:"must NOT have more than 12 items",schema:12,parentSchema:schema31.properties.points,data:data19};
if(vErrors === null){
vErrors = [err57];
}
else {
vErrors.push(err57);
}
errors++;
}
if(data19.length < 2){
const err58 = {instancePath:instancePath+"/points",schemaPath:"#/properties/points/minItems",keyword:"minItems",params:{limit: 2},message:"must NOT have fewer than 2 items",schema:2,parentSchema:schema31.properties.points,data:data19};
if(vErrors === null){
vErrors = [err58];
}
else {
vErrors.push(err58);
}
errors++;
}
const len4 = data19.length;
for(let i6=0; i6<len4; i6++){
let data20 = data19[i6];
if(data20 && typeof data20 == "object" && !Array.isArray(data20)){
if(data20.id === undefined){
const err59 = {instancePath:instancePath+"/points/" + i6,schemaPath:"#/properties/points/items/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema31.properties.points.items.required,parentSchema:schema31.properties.points.items,data:data20};
if(vErrors === null){
vErrors = [err59];
}
else {
vErrors.push(err59);
}
errors++;
}
if(data20.say === undefined){
const err60 = {instancePath:instancePath+"/points/" + i6,schemaPath:"#/properties/points/items/required",keyword:"required",params:{missingProperty: "say"},message:"must have required property '"+"say"+"'",schema:schema31.properties.points.items.required,parentSchema:schema31.properties.points.items,data:data20};
if(vErrors === null){
vErrors = [err60];
}
else {
vErrors.push(err60);
}
errors++;
}
if(data20.from === undefined){
const err61 = {instancePath:instancePath+"/points/" + i6,schemaPath:"#/properties/points/items/required",keyword:"required",params:{missingProperty: "from"},message:"must have required property '"+"from"+"'",schema:schema31.properties.points.items.required,parentSchema:schema31.properties.points.items,data:data20};
if(vErrors === null){
vErrors = [err61];
}
else {
vErrors.push(err61);
}
errors++;
}
for(const key4 in data20){
if(!(((key4 === "id") || (key4 === "say")) || (key4 === "from"))){
const err62 = {instancePath:instancePath+"/points/" + i6,schemaPath:"#/properties/points/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key4},message:"must NOT have additional properties",schema:false,parentSchema:schema31.properties.points.items,data:data20};
if(vErrors === null){
vErrors = [err62];
}
else {
vErrors.push(err62);
}
errors++;
}
}
if(data20.id !== undefined){
let data21 = data20.id;
if(typeof data21 === "string"){
if(func2(data21) > 80){
const err63 = {instancePath:instancePath+"/points/" + i6+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data21};
if(vErrors === null){
vErrors = [err63];
}
else {
vErrors.push(err63);
}
errors++;
}
if(!pattern4.test(data21)){
const err64 = {instancePath:instancePath+"/points/" + i6+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data21};
if(vErrors === null){
vErrors = [err64];
}
else {
vErrors.push(err64);
}
errors++;
}
}
else {
const err65 = {instancePath:instancePath+"/points/" + i6+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data21};
if(vErrors === null){
vErrors = [err65];
}
else {
vErrors.push(err65);
}
errors++;
}
}
if(data20.say !== undefined){
let data22 = data20.say;
if(typeof data22 === "string"){
if(func2(data22) > 2000){
const err66 = {instancePath:instancePath+"/points/" + i6+"/say",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data22};
if(vErrors === null){
vErrors = [err66];
}
else {
vErrors.push(err66);
}
errors++;
}
if(func2(data22) < 1){
const err67 = {instancePath:instancePath+"/points/" + i6+"/say",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data22};
if(vErrors === null){
vErrors = [err67];
}
else {
vErrors.push(err67);
}
errors++;
}
}
else {
const err68 = {instancePath:instancePath+"/points/" + i6+"/say",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data22};
if(vErrors === null){
vErrors = [err68];
}
else {
vErrors.push(err68);
}
errors++;
}
}
if(data20.from !== undefined){
let data23 = data20.from;
if(Array.isArray(data23)){
if(data23.length < 1){
const err69 = {instancePath:instancePath+"/points/" + i6+"/from",schemaPath:"#/properties/points/items/properties/from/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema31.properties.points.items.properties.from,data:data23};
if(vErrors === null){
vErrors = [err69];
}
else {
vErrors.push(err69);
}
errors++;
}
const len5 = data23.length;
for(let i7=0; i7<len5; i7++){
let data24 = data23[i7];
if(typeof data24 === "string"){
if(func2(data24) > 170){
const err70 = {instancePath:instancePath+"/points/" + i6+"/from/" + i7,schemaPath:"defs.json#/$defs/origin/maxLength",keyword:"maxLength",params:{limit: 170},message:"must NOT have more than 170 characters",schema:170,parentSchema:schema42,data:data24};
if(vErrors === null){
vErrors = [err70];
}
else {
vErrors.push(err70);
}
errors++;
}
if(!pattern8.test(data24)){
const err71 = {instancePath:instancePath+"/points/" + i6+"/from/" + i7,schemaPath:"defs.json#/$defs/origin/pattern",keyword:"pattern",params:{pattern: "^(?:step|rule|task|limit|procedure):[a-z0-9]+(?:[-./][a-z0-9]+)*$"},message:"must match pattern \""+"^(?:step|rule|task|limit|procedure):[a-z0-9]+(?:[-./][a-z0-9]+)*$"+"\"",schema:"^(?:step|rule|task|limit|procedure):[a-z0-9]+(?:[-./][a-z0-9]+)*$",parentSchema:schema42,data:data24};
if(vErrors === null){
vErrors = [err71];
}
else {
vErrors.push(err71);
}
errors++;
}
}
else {
const err72 = {instancePath:instancePath+"/points/" + i6+"/from/" + i7,schemaPath:"defs.json#/$defs/origin/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema42.type,parentSchema:schema42,data:data24};
if(vErrors === null){
vErrors = [err72];
}
else {
vErrors.push(err72);
}
errors++;
}
}
let i8 = data23.length;
let j2;
if(i8 > 1){
outer2:
for(;i8--;){
for(j2 = i8; j2--;){
if(func0(data23[i8], data23[j2])){
const err73 = {instancePath:instancePath+"/points/" + i6+"/from",schemaPath:"#/properties/points/items/properties/from/uniqueItems",keyword:"uniqueItems",params:{i: i8, j: j2},message:"must NOT have duplicate items (items ## "+j2+" and "+i8+" are identical)",schema:true,parentSchema:schema31.properties.points.items.properties.from,data:data23};
if(vErrors === null){
vErrors = [err73];
}
else {
vErrors.push(err73);
}
errors++;
break outer2;
}
}
}
}
}
else {
const err74 = {instancePath:instancePath+"/points/" + i6+"/from",schemaPath:"#/properties/points/items/properties/from/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema31.properties.points.items.properties.from.type,parentSchema:schema31.properties.points.items.properties.from,data:data23};
if(vErrors === null){
vErrors = [err74];
}
else {
vErrors.push(err74);
}
errors++;
}
}
}
else {
const err75 = {instancePath:instancePath+"/points/" + i6,schemaPath:"#/properties/points/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema31.properties.points.items.type,parentSchema:schema31.properties.points.items,data:data20};
if(vErrors === null){
vErrors = [err75];
}
else {
vErrors.push(err75);
}
errors++;
}
}
}
else {
const err76 = {instancePath:instancePath+"/points",schemaPath:"#/properties/points/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema31.properties.points.type,parentSchema:schema31.properties.points,data:data19};
if(vErrors === null){
vErrors = [err76];
}
else {
vErrors.push(err76);
}
errors++;
}
}
if(data.stop !== undefined){
let data25 = data.stop;
if(data25 && typeof data25 == "object" && !Array.isArray(data25)){
if(data25.say === undefined){
const err77 = {instancePath:instancePath+"/stop",schemaPath:"#/properties/stop/required",keyword:"required",params:{missingProperty: "say"},message:"must have required property '"+"say"+"'",schema:schema31.properties.stop.required,parentSchema:schema31.properties.stop,data:data25};
if(vErrors === null){
vErrors = [err77];
}
else {
vErrors.push(err77);
}
errors++;
}
if(data25.from === undefined){
const err78 = {instancePath:instancePath+"/stop",schemaPath:"#/properties/stop/required",keyword:"required",params:{missingProperty: "from"},message:"must have required property '"+"from"+"'",schema:schema31.properties.stop.required,parentSchema:schema31.properties.stop,data:data25};
if(vErrors === null){
vErrors = [err78];
}
else {
vErrors.push(err78);
}
errors++;
}
for(const key5 in data25){
if(!((key5 === "say") || (key5 === "from"))){
const err79 = {instancePath:instancePath+"/stop",schemaPath:"#/properties/stop/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key5},message:"must NOT have additional properties",schema:false,parentSchema:schema31.properties.stop,data:data25};
if(vErrors === null){
vErrors = [err79];
}
else {
vErrors.push(err79);
}
errors++;
}
}
if(data25.say !== undefined){
let data26 = data25.say;
if(typeof data26 === "string"){
if(func2(data26) > 2000){
const err80 = {instancePath:instancePath+"/stop/say",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data26};
if(vErrors === null){
vErrors = [err80];
}
else {
vErrors.push(err80);
}
errors++;
}
if(func2(data26) < 1){
const err81 = {instancePath:instancePath+"/stop/say",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data26};
if(vErrors === null){
vErrors = [err81];
}
else {
vErrors.push(err81);
}
errors++;
}
}
else {
const err82 = {instancePath:instancePath+"/stop/say",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data26};
if(vErrors === null){
vErrors = [err82];
}
else {
vErrors.push(err82);
}
errors++;
}
}
if(data25.from !== undefined){
let data27 = data25.from;
if(Array.isArray(data27)){
if(data27.length < 1){
const err83 = {instancePath:instancePath+"/stop/from",schemaPath:"#/properties/stop/properties/from/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema31.properties.stop.properties.from,data:data27};
if(vErrors === null){
vErrors = [err83];
}
else {
vErrors.push(err83);
}
errors++;
}
const len6 = data27.length;
for(let i9=0; i9<len6; i9++){
let data28 = data27[i9];
if(typeof data28 === "string"){
if(func2(data28) > 170){
const err84 = {instancePath:instancePath+"/stop/from/" + i9,schemaPath:"defs.json#/$defs/origin/maxLength",keyword:"maxLength",params:{limit: 170},message:"must NOT have more than 170 characters",schema:170,parentSchema:schema42,data:data28};
if(vErrors === null){
vErrors = [err84];
}
else {
vErrors.push(err84);
}
errors++;
}
if(!pattern8.test(data28)){
const err85 = {instancePath:instancePath+"/stop/from/" + i9,schemaPath:"defs.json#/$defs/origin/pattern",keyword:"pattern",params:{pattern: "^(?:step|rule|task|limit|procedure):[a-z0-9]+(?:[-./][a-z0-9]+)*$"},message:"must match pattern \""+"^(?:step|rule|task|limit|procedure):[a-z0-9]+(?:[-./][a-z0-9]+)*$"+"\"",schema:"^(?:step|rule|task|limit|procedure):[a-z0-9]+(?:[-./][a-z0-9]+)*$",parentSchema:schema42,data:data28};
if(vErrors === null){
vErrors = [err85];
}
else {
vErrors.push(err85);
}
errors++;
}
}
else {
const err86 = {instancePath:instancePath+"/stop/from/" + i9,schemaPath:"defs.json#/$defs/origin/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema42.type,parentSchema:schema42,data:data28};
if(vErrors === null){
vErrors = [err86];
}
else {
vErrors.push(err86);
}
errors++;
}
}
let i10 = data27.length;
let j3;
if(i10 > 1){
outer3:
for(;i10--;){
for(j3 = i10; j3--;){
if(func0(data27[i10], data27[j3])){
const err87 = {instancePath:instancePath+"/stop/from",schemaPath:"#/properties/stop/properties/from/uniqueItems",keyword:"uniqueItems",params:{i: i10, j: j3},message:"must NOT have duplicate items (items ## "+j3+" and "+i10+" are identical)",schema:true,parentSchema:schema31.properties.stop.properties.from,data:data27};
if(vErrors === null){
vErrors = [err87];
}
else {
vErrors.push(err87);
}
errors++;
break outer3;
}
}
}
}
}
else {
const err88 = {instancePath:instancePath+"/stop/from",schemaPath:"#/properties/stop/properties/from/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema31.properties.stop.properties.from.type,parentSchema:schema31.properties.stop.properties.from,data:data27};
if(vErrors === null){
vErrors = [err88];
}
else {
vErrors.push(err88);
}
errors++;
}
}
}
else {
const err89 = {instancePath:instancePath+"/stop",schemaPath:"#/properties/stop/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema31.properties.stop.type,parentSchema:schema31.properties.stop,data:data25};
if(vErrors === null){
vErrors = [err89];
}
else {
vErrors.push(err89);
}
errors++;
}
}
if(data.call !== undefined){
let data29 = data.call;
if(Array.isArray(data29)){
if(data29.length < 1){
const err90 = {instancePath:instancePath+"/call",schemaPath:"#/properties/call/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema31.properties.call,data:data29};
if(vErrors === null){
vErrors = [err90];
}
else {
vErrors.push(err90);
}
errors++;
}
const len7 = data29.length;
for(let i11=0; i11<len7; i11++){
let data30 = data29[i11];
if(data30 && typeof data30 == "object" && !Array.isArray(data30)){
if(data30.when === undefined){
const err91 = {instancePath:instancePath+"/call/" + i11,schemaPath:"#/properties/call/items/required",keyword:"required",params:{missingProperty: "when"},message:"must have required property '"+"when"+"'",schema:schema31.properties.call.items.required,parentSchema:schema31.properties.call.items,data:data30};
if(vErrors === null){
vErrors = [err91];
}
else {
vErrors.push(err91);
}
errors++;
}
if(data30.whom === undefined){
const err92 = {instancePath:instancePath+"/call/" + i11,schemaPath:"#/properties/call/items/required",keyword:"required",params:{missingProperty: "whom"},message:"must have required property '"+"whom"+"'",schema:schema31.properties.call.items.required,parentSchema:schema31.properties.call.items,data:data30};
if(vErrors === null){
vErrors = [err92];
}
else {
vErrors.push(err92);
}
errors++;
}
for(const key6 in data30){
if(!((key6 === "when") || (key6 === "whom"))){
const err93 = {instancePath:instancePath+"/call/" + i11,schemaPath:"#/properties/call/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key6},message:"must NOT have additional properties",schema:false,parentSchema:schema31.properties.call.items,data:data30};
if(vErrors === null){
vErrors = [err93];
}
else {
vErrors.push(err93);
}
errors++;
}
}
if(data30.when !== undefined){
let data31 = data30.when;
if(typeof data31 === "string"){
if(func2(data31) > 2000){
const err94 = {instancePath:instancePath+"/call/" + i11+"/when",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data31};
if(vErrors === null){
vErrors = [err94];
}
else {
vErrors.push(err94);
}
errors++;
}
if(func2(data31) < 1){
const err95 = {instancePath:instancePath+"/call/" + i11+"/when",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data31};
if(vErrors === null){
vErrors = [err95];
}
else {
vErrors.push(err95);
}
errors++;
}
}
else {
const err96 = {instancePath:instancePath+"/call/" + i11+"/when",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data31};
if(vErrors === null){
vErrors = [err96];
}
else {
vErrors.push(err96);
}
errors++;
}
}
if(data30.whom !== undefined){
let data32 = data30.whom;
if(typeof data32 === "string"){
if(func2(data32) > 90){
const err97 = {instancePath:instancePath+"/call/" + i11+"/whom",schemaPath:"#/properties/call/items/properties/whom/maxLength",keyword:"maxLength",params:{limit: 90},message:"must NOT have more than 90 characters",schema:90,parentSchema:schema31.properties.call.items.properties.whom,data:data32};
if(vErrors === null){
vErrors = [err97];
}
else {
vErrors.push(err97);
}
errors++;
}
if(!pattern14.test(data32)){
const err98 = {instancePath:instancePath+"/call/" + i11+"/whom",schemaPath:"#/properties/call/items/properties/whom/pattern",keyword:"pattern",params:{pattern: "^(?:contact|role):[a-z0-9]+(?:[-.][a-z0-9]+)*$"},message:"must match pattern \""+"^(?:contact|role):[a-z0-9]+(?:[-.][a-z0-9]+)*$"+"\"",schema:"^(?:contact|role):[a-z0-9]+(?:[-.][a-z0-9]+)*$",parentSchema:schema31.properties.call.items.properties.whom,data:data32};
if(vErrors === null){
vErrors = [err98];
}
else {
vErrors.push(err98);
}
errors++;
}
}
else {
const err99 = {instancePath:instancePath+"/call/" + i11+"/whom",schemaPath:"#/properties/call/items/properties/whom/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema31.properties.call.items.properties.whom.type,parentSchema:schema31.properties.call.items.properties.whom,data:data32};
if(vErrors === null){
vErrors = [err99];
}
else {
vErrors.push(err99);
}
errors++;
}
}
}
else {
const err100 = {instancePath:instancePath+"/call/" + i11,schemaPath:"#/properties/call/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema31.properties.call.items.type,parentSchema:schema31.properties.call.items,data:data30};
if(vErrors === null){
vErrors = [err100];
}
else {
vErrors.push(err100);
}
errors++;
}
}
}
else {
const err101 = {instancePath:instancePath+"/call",schemaPath:"#/properties/call/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema31.properties.call.type,parentSchema:schema31.properties.call,data:data29};
if(vErrors === null){
vErrors = [err101];
}
else {
vErrors.push(err101);
}
errors++;
}
}
}
else {
const err102 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema31.type,parentSchema:schema31,data};
if(vErrors === null){
vErrors = [err102];
}
else {
vErrors.push(err102);
}
errors++;
}
validate20.errors = vErrors;
return errors === 0;
}
validate20.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_clinic = validate34;
const schema53 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"clinic.json","title":"Clinic","description":"Who and where the clinic is, and its document control.","type":"object","additionalProperties":false,"required":["kind","id","name","address","phone","region","packs","document","people","rooms","contacts","about"],"properties":{"kind":{"const":"clinic","description":"The kind of document; it picks this schema."},"id":{"$ref":"defs.json#/$defs/id"},"name":{"type":"string","minLength":1,"description":"Name of the clinic."},"address":{"type":"array","items":{"type":"string","minLength":1},"minItems":1},"phone":{"type":"string","minLength":1,"description":"Telephone."},"region":{"type":"string","pattern":"^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$"},"packs":{"type":"object","additionalProperties":{"type":"string","minLength":1,"description":"SemVer range."},"propertyNames":{"$ref":"defs.json#/$defs/id"},"minProperties":1,"description":"The packs the clinic uses, with a SemVer range each."},"document":{"type":"object","additionalProperties":false,"required":["title","number","version","effective","review-by","approved-by"],"properties":{"title":{"$ref":"defs.json#/$defs/label"},"number":{"type":"string","minLength":1,"description":"Document number."},"version":{"type":"string","minLength":1,"description":"Version of the manual."},"effective":{"$ref":"defs.json#/$defs/date"},"review-by":{"$ref":"defs.json#/$defs/date"},"approved-by":{"$ref":"defs.json#/$defs/id","description":"Id of a person."},"paper":{"enum":["a4","letter"]},"language":{"$ref":"defs.json#/$defs/language","description":"What the manual is written in, where it is not the language of the region's pack: one of the folders of `rules/languages`."}}},"people":{"type":"array","items":{"type":"object","additionalProperties":false,"required":["id","name","job","roles"],"properties":{"id":{"$ref":"defs.json#/$defs/id"},"name":{"type":"string","minLength":1,"description":"Full name."},"job":{"type":"string","minLength":1,"description":"Job title as used in the clinic."},"roles":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Terms of the domain role."}}},"minItems":1},"rooms":{"type":"array","items":{"type":"object","additionalProperties":false,"required":["id","name","zones"],"properties":{"id":{"$ref":"defs.json#/$defs/id"},"name":{"type":"string","minLength":1,"description":"Name as on the door."},"zones":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Terms of the domain zone that are in it."},"note":{"$ref":"defs.json#/$defs/text","description":"Where things are in it."}}},"minItems":1},"contacts":{"type":"array","items":{"type":"object","additionalProperties":false,"required":["id","for","name","phone"],"properties":{"id":{"$ref":"defs.json#/$defs/id"},"for":{"$ref":"defs.json#/$defs/label"},"name":{"type":"string","minLength":1,"description":"Who."},"phone":{"type":"string","minLength":1,"description":"Telephone."},"note":{"$ref":"defs.json#/$defs/text","description":"When to call and what to say."}}},"minItems":1},"facts":{"$ref":"defs.json#/$defs/situation","description":"Facts stated by the clinic."},"supplies":{"type":"array","items":{"type":"object","additionalProperties":false,"required":["for","name","use"],"properties":{"for":{"$ref":"defs.json#/$defs/label"},"name":{"type":"string","minLength":1,"description":"Name on the container."},"use":{"$ref":"defs.json#/$defs/text","description":"Dose and use as its maker states them."},"where":{"type":"string","minLength":1,"description":"Where it is kept."}}},"minItems":1},"about":{"$ref":"defs.json#/$defs/text","description":"What the clinic does, for the scope of the manual."}}};
const schema57 = {"type":"string","pattern":"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$","description":"A calendar date, YYYY-MM-DD."};
const schema60 = {"type":"string","pattern":"^[a-z]{2}(?:-[A-Z]{2})?$","description":"A language and where it is spoken: `en-CA`, `fr-CA`."};
const pattern16 = new RegExp("^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$", "u");
const pattern18 = new RegExp("^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$", "u");
const pattern21 = new RegExp("^[a-z]{2}(?:-[A-Z]{2})?$", "u");

function validate35(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate35.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
for(const key0 in data){
const _errs1 = errors;
if(typeof key0 === "string"){
if(func2(key0) > 80){
const err0 = {instancePath,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(!pattern4.test(key0)){
const err1 = {instancePath,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
else {
const err2 = {instancePath,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
var valid0 = _errs1 === errors;
if(!valid0){
const err3 = {instancePath,schemaPath:"#/propertyNames",keyword:"propertyNames",params:{propertyName: key0},message:"property name must be valid",schema:schema45.propertyNames,parentSchema:schema45,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
for(const key1 in data){
let data0 = data[key1];
if((((typeof data0 !== "string") && (!((typeof data0 == "number") && (isFinite(data0))))) && (typeof data0 !== "boolean")) && (!(Array.isArray(data0)))){
const err4 = {instancePath:instancePath+"/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/additionalProperties/type",keyword:"type",params:{type: schema45.additionalProperties.type},message:"must be string,number,boolean,array",schema:schema45.additionalProperties.type,parentSchema:schema45.additionalProperties,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(Array.isArray(data0)){
const len0 = data0.length;
for(let i0=0; i0<len0; i0++){
let data1 = data0[i0];
if(typeof data1 !== "string"){
const err5 = {instancePath:instancePath+"/" + key1.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + i0,schemaPath:"#/additionalProperties/items/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema45.additionalProperties.items.type,parentSchema:schema45.additionalProperties.items,data:data1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
}
}
}
else {
const err6 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema45.type,parentSchema:schema45,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
validate35.errors = vErrors;
return errors === 0;
}
validate35.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate34(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="clinic.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate34.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema53.required,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.id === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema53.required,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data.name === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "name"},message:"must have required property '"+"name"+"'",schema:schema53.required,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
if(data.address === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "address"},message:"must have required property '"+"address"+"'",schema:schema53.required,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(data.phone === undefined){
const err4 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "phone"},message:"must have required property '"+"phone"+"'",schema:schema53.required,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(data.region === undefined){
const err5 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "region"},message:"must have required property '"+"region"+"'",schema:schema53.required,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(data.packs === undefined){
const err6 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "packs"},message:"must have required property '"+"packs"+"'",schema:schema53.required,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
if(data.document === undefined){
const err7 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "document"},message:"must have required property '"+"document"+"'",schema:schema53.required,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
if(data.people === undefined){
const err8 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "people"},message:"must have required property '"+"people"+"'",schema:schema53.required,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(data.rooms === undefined){
const err9 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "rooms"},message:"must have required property '"+"rooms"+"'",schema:schema53.required,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(data.contacts === undefined){
const err10 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "contacts"},message:"must have required property '"+"contacts"+"'",schema:schema53.required,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
if(data.about === undefined){
const err11 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "about"},message:"must have required property '"+"about"+"'",schema:schema53.required,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
for(const key0 in data){
if(!(func1.call(schema53.properties, key0))){
const err12 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("clinic" !== data0){
const err13 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "clinic"},message:"must be equal to constant",schema:"clinic",parentSchema:schema53.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
if(data.id !== undefined){
let data1 = data.id;
if(typeof data1 === "string"){
if(func2(data1) > 80){
const err14 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
if(!pattern4.test(data1)){
const err15 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
}
else {
const err16 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
if(data.name !== undefined){
let data2 = data.name;
if(typeof data2 === "string"){
if(func2(data2) < 1){
const err17 = {instancePath:instancePath+"/name",schemaPath:"#/properties/name/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.name,data:data2};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
else {
const err18 = {instancePath:instancePath+"/name",schemaPath:"#/properties/name/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.name.type,parentSchema:schema53.properties.name,data:data2};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
if(data.address !== undefined){
let data3 = data.address;
if(Array.isArray(data3)){
if(data3.length < 1){
const err19 = {instancePath:instancePath+"/address",schemaPath:"#/properties/address/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema53.properties.address,data:data3};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
const len0 = data3.length;
for(let i0=0; i0<len0; i0++){
let data4 = data3[i0];
if(typeof data4 === "string"){
if(func2(data4) < 1){
const err20 = {instancePath:instancePath+"/address/" + i0,schemaPath:"#/properties/address/items/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.address.items,data:data4};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
else {
const err21 = {instancePath:instancePath+"/address/" + i0,schemaPath:"#/properties/address/items/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.address.items.type,parentSchema:schema53.properties.address.items,data:data4};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
}
else {
const err22 = {instancePath:instancePath+"/address",schemaPath:"#/properties/address/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema53.properties.address.type,parentSchema:schema53.properties.address,data:data3};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
if(data.phone !== undefined){
let data5 = data.phone;
if(typeof data5 === "string"){
if(func2(data5) < 1){
const err23 = {instancePath:instancePath+"/phone",schemaPath:"#/properties/phone/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.phone,data:data5};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
else {
const err24 = {instancePath:instancePath+"/phone",schemaPath:"#/properties/phone/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.phone.type,parentSchema:schema53.properties.phone,data:data5};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
if(data.region !== undefined){
let data6 = data.region;
if(typeof data6 === "string"){
if(!pattern16.test(data6)){
const err25 = {instancePath:instancePath+"/region",schemaPath:"#/properties/region/pattern",keyword:"pattern",params:{pattern: "^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$"},message:"must match pattern \""+"^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$"+"\"",schema:"^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$",parentSchema:schema53.properties.region,data:data6};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
}
else {
const err26 = {instancePath:instancePath+"/region",schemaPath:"#/properties/region/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.region.type,parentSchema:schema53.properties.region,data:data6};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
if(data.packs !== undefined){
let data7 = data.packs;
if(data7 && typeof data7 == "object" && !Array.isArray(data7)){
if(Object.keys(data7).length < 1){
const err27 = {instancePath:instancePath+"/packs",schemaPath:"#/properties/packs/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema53.properties.packs,data:data7};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
for(const key1 in data7){
const _errs18 = errors;
if(typeof key1 === "string"){
if(func2(key1) > 80){
const err28 = {instancePath:instancePath+"/packs",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
if(!pattern4.test(key1)){
const err29 = {instancePath:instancePath+"/packs",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
}
else {
const err30 = {instancePath:instancePath+"/packs",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
var valid4 = _errs18 === errors;
if(!valid4){
const err31 = {instancePath:instancePath+"/packs",schemaPath:"#/properties/packs/propertyNames",keyword:"propertyNames",params:{propertyName: key1},message:"property name must be valid",schema:schema53.properties.packs.propertyNames,parentSchema:schema53.properties.packs,data:data7};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
}
for(const key2 in data7){
let data8 = data7[key2];
if(typeof data8 === "string"){
if(func2(data8) < 1){
const err32 = {instancePath:instancePath+"/packs/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/packs/additionalProperties/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.packs.additionalProperties,data:data8};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
}
else {
const err33 = {instancePath:instancePath+"/packs/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/packs/additionalProperties/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.packs.additionalProperties.type,parentSchema:schema53.properties.packs.additionalProperties,data:data8};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
}
}
else {
const err34 = {instancePath:instancePath+"/packs",schemaPath:"#/properties/packs/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema53.properties.packs.type,parentSchema:schema53.properties.packs,data:data7};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
}
if(data.document !== undefined){
let data9 = data.document;
if(data9 && typeof data9 == "object" && !Array.isArray(data9)){
if(data9.title === undefined){
const err35 = {instancePath:instancePath+"/document",schemaPath:"#/properties/document/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema53.properties.document.required,parentSchema:schema53.properties.document,data:data9};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
if(data9.number === undefined){
const err36 = {instancePath:instancePath+"/document",schemaPath:"#/properties/document/required",keyword:"required",params:{missingProperty: "number"},message:"must have required property '"+"number"+"'",schema:schema53.properties.document.required,parentSchema:schema53.properties.document,data:data9};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
}
if(data9.version === undefined){
const err37 = {instancePath:instancePath+"/document",schemaPath:"#/properties/document/required",keyword:"required",params:{missingProperty: "version"},message:"must have required property '"+"version"+"'",schema:schema53.properties.document.required,parentSchema:schema53.properties.document,data:data9};
if(vErrors === null){
vErrors = [err37];
}
else {
vErrors.push(err37);
}
errors++;
}
if(data9.effective === undefined){
const err38 = {instancePath:instancePath+"/document",schemaPath:"#/properties/document/required",keyword:"required",params:{missingProperty: "effective"},message:"must have required property '"+"effective"+"'",schema:schema53.properties.document.required,parentSchema:schema53.properties.document,data:data9};
if(vErrors === null){
vErrors = [err38];
}
else {
vErrors.push(err38);
}
errors++;
}
if(data9["review-by"] === undefined){
const err39 = {instancePath:instancePath+"/document",schemaPath:"#/properties/document/required",keyword:"required",params:{missingProperty: "review-by"},message:"must have required property '"+"review-by"+"'",schema:schema53.properties.document.required,parentSchema:schema53.properties.document,data:data9};
if(vErrors === null){
vErrors = [err39];
}
else {
vErrors.push(err39);
}
errors++;
}
if(data9["approved-by"] === undefined){
const err40 = {instancePath:instancePath+"/document",schemaPath:"#/properties/document/required",keyword:"required",params:{missingProperty: "approved-by"},message:"must have required property '"+"approved-by"+"'",schema:schema53.properties.document.required,parentSchema:schema53.properties.document,data:data9};
if(vErrors === null){
vErrors = [err40];
}
else {
vErrors.push(err40);
}
errors++;
}
for(const key3 in data9){
if(!((((((((key3 === "title") || (key3 === "number")) || (key3 === "version")) || (key3 === "effective")) || (key3 === "review-by")) || (key3 === "approved-by")) || (key3 === "paper")) || (key3 === "language"))){
const err41 = {instancePath:instancePath+"/document",schemaPath:"#/properties/document/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key3},message:"must NOT have additional properties",schema:false,parentSchema:schema53.properties.document,data:data9};
if(vErrors === null){
vErrors = [err41];
}
else {
vErrors.push(err41);
}
errors++;
}
}
if(data9.title !== undefined){
let data10 = data9.title;
if(typeof data10 === "string"){
if(func2(data10) > 120){
const err42 = {instancePath:instancePath+"/document/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data10};
if(vErrors === null){
vErrors = [err42];
}
else {
vErrors.push(err42);
}
errors++;
}
if(func2(data10) < 1){
const err43 = {instancePath:instancePath+"/document/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data10};
if(vErrors === null){
vErrors = [err43];
}
else {
vErrors.push(err43);
}
errors++;
}
}
else {
const err44 = {instancePath:instancePath+"/document/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data10};
if(vErrors === null){
vErrors = [err44];
}
else {
vErrors.push(err44);
}
errors++;
}
}
if(data9.number !== undefined){
let data11 = data9.number;
if(typeof data11 === "string"){
if(func2(data11) < 1){
const err45 = {instancePath:instancePath+"/document/number",schemaPath:"#/properties/document/properties/number/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.document.properties.number,data:data11};
if(vErrors === null){
vErrors = [err45];
}
else {
vErrors.push(err45);
}
errors++;
}
}
else {
const err46 = {instancePath:instancePath+"/document/number",schemaPath:"#/properties/document/properties/number/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.document.properties.number.type,parentSchema:schema53.properties.document.properties.number,data:data11};
if(vErrors === null){
vErrors = [err46];
}
else {
vErrors.push(err46);
}
errors++;
}
}
if(data9.version !== undefined){
let data12 = data9.version;
if(typeof data12 === "string"){
if(func2(data12) < 1){
const err47 = {instancePath:instancePath+"/document/version",schemaPath:"#/properties/document/properties/version/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.document.properties.version,data:data12};
if(vErrors === null){
vErrors = [err47];
}
else {
vErrors.push(err47);
}
errors++;
}
}
else {
const err48 = {instancePath:instancePath+"/document/version",schemaPath:"#/properties/document/properties/version/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.document.properties.version.type,parentSchema:schema53.properties.document.properties.version,data:data12};
if(vErrors === null){
vErrors = [err48];
}
else {
vErrors.push(err48);
}
errors++;
}
}
if(data9.effective !== undefined){
let data13 = data9.effective;
if(typeof data13 === "string"){
if(!pattern18.test(data13)){
const err49 = {instancePath:instancePath+"/document/effective",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data13};
if(vErrors === null){
vErrors = [err49];
}
else {
vErrors.push(err49);
}
errors++;
}
}
else {
const err50 = {instancePath:instancePath+"/document/effective",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data13};
if(vErrors === null){
vErrors = [err50];
}
else {
vErrors.push(err50);
}
errors++;
}
}
if(data9["review-by"] !== undefined){
let data14 = data9["review-by"];
if(typeof data14 === "string"){
if(!pattern18.test(data14)){
const err51 = {instancePath:instancePath+"/document/review-by",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data14};
if(vErrors === null){
vErrors = [err51];
}
else {
vErrors.push(err51);
}
errors++;
}
}
else {
const err52 = {instancePath:instancePath+"/document/review-by",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data14};
if(vErrors === null){
vErrors = [err52];
}
else {
vErrors.push(err52);
}
errors++;
}
}
if(data9["approved-by"] !== undefined){
let data15 = data9["approved-by"];
if(typeof data15 === "string"){
if(func2(data15) > 80){
const err53 = {instancePath:instancePath+"/document/approved-by",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data15};
if(vErrors === null){
vErrors = [err53];
}
else {
vErrors.push(err53);
}
errors++;
}
if(!pattern4.test(data15)){
const err54 = {instancePath:instancePath+"/document/approved-by",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data15};
if(vErrors === null){
vErrors = [err54];
}
else {
vErrors.push(err54);
}
errors++;
}
}
else {
const err55 = {instancePath:instancePath+"/document/approved-by",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data15};
if(vErrors === null){
vErrors = [err55];
}
else {
vErrors.push(err55);
}
errors++;
}
}
if(data9.paper !== undefined){
let data16 = data9.paper;
if(!((data16 === "a4") || (data16 === "letter"))){
const err56 = {instancePath:instancePath+"/document/paper",schemaPath:"#/properties/document/properties/paper/enum",keyword:"enum",params:{allowedValues: schema53.properties.document.properties.paper.enum},message:"must be equal to one of the allowed values",schema:schema53.properties.document.properties.paper.enum,parentSchema:schema53.properties.document.properties.paper,data:data16};
if(vErrors === null){
vErrors = [err56];
}
else {
vErrors.push(err56);
}
errors++;
}
}
if(data9.language !== undefined){
let data17 = data9.language;
if(typeof data17 === "string"){
if(!pattern21.test(data17)){
const err57 = {instancePath:instancePath+"/document/language",schemaPath:"defs.json#/$defs/language/pattern",keyword:"pattern",params:{pattern: "^[a-z]{2}(?:-[A-Z]{2})?$"},message:"must match pattern \""+"^[a-z]{2}(?:-[A-Z]{2})?$"+"\"",schema:"^[a-z]{2}(?:-[A-Z]{2})?$",parentSchema:schema60,data:data17};
if(vErrors === null){
vErrors = [err57];
}
else {
vErrors.push(err57);
}
errors++;
}
}
else {
const err58 = {instancePath:instancePath+"/document/language",schemaPath:"defs.json#/$defs/language/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema60.type,parentSchema:schema60,data:data17};
if(vErrors === null){
vErrors = [err58];
}
else {
vErrors.push(err58);
}
errors++;
}
}
}
else {
const err59 = {instancePath:instancePath+"/document",schemaPath:"#/properties/document/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema53.properties.document.type,parentSchema:schema53.properties.document,data:data9};
if(vErrors === null){
vErrors = [err59];
}
else {
vErrors.push(err59);
}
errors++;
}
}
if(data.people !== undefined){
let data18 = data.people;
if(Array.isArray(data18)){
if(data18.length < 1){
const err60 = {instancePath:instancePath+"/people",schemaPath:"#/properties/people/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema53.properties.people,data:data18};
if(vErrors === null){
vErrors = [err60];
}
else {
vErrors.push(err60);
}
errors++;
}
const len1 = data18.length;
for(let i1=0; i1<len1; i1++){
let data19 = data18[i1];
if(data19 && typeof data19 == "object" && !Array.isArray(data19)){
if(data19.id === undefined){
const err61 = {instancePath:instancePath+"/people/" + i1,schemaPath:"#/properties/people/items/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema53.properties.people.items.required,parentSchema:schema53.properties.people.items,data:data19};
if(vErrors === null){
vErrors = [err61];
}
else {
vErrors.push(err61);
}
errors++;
}
if(data19.name === undefined){
const err62 = {instancePath:instancePath+"/people/" + i1,schemaPath:"#/properties/people/items/required",keyword:"required",params:{missingProperty: "name"},message:"must have required property '"+"name"+"'",schema:schema53.properties.people.items.required,parentSchema:schema53.properties.people.items,data:data19};
if(vErrors === null){
vErrors = [err62];
}
else {
vErrors.push(err62);
}
errors++;
}
if(data19.job === undefined){
const err63 = {instancePath:instancePath+"/people/" + i1,schemaPath:"#/properties/people/items/required",keyword:"required",params:{missingProperty: "job"},message:"must have required property '"+"job"+"'",schema:schema53.properties.people.items.required,parentSchema:schema53.properties.people.items,data:data19};
if(vErrors === null){
vErrors = [err63];
}
else {
vErrors.push(err63);
}
errors++;
}
if(data19.roles === undefined){
const err64 = {instancePath:instancePath+"/people/" + i1,schemaPath:"#/properties/people/items/required",keyword:"required",params:{missingProperty: "roles"},message:"must have required property '"+"roles"+"'",schema:schema53.properties.people.items.required,parentSchema:schema53.properties.people.items,data:data19};
if(vErrors === null){
vErrors = [err64];
}
else {
vErrors.push(err64);
}
errors++;
}
for(const key4 in data19){
if(!((((key4 === "id") || (key4 === "name")) || (key4 === "job")) || (key4 === "roles"))){
const err65 = {instancePath:instancePath+"/people/" + i1,schemaPath:"#/properties/people/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key4},message:"must NOT have additional properties",schema:false,parentSchema:schema53.properties.people.items,data:data19};
if(vErrors === null){
vErrors = [err65];
}
else {
vErrors.push(err65);
}
errors++;
}
}
if(data19.id !== undefined){
let data20 = data19.id;
if(typeof data20 === "string"){
if(func2(data20) > 80){
const err66 = {instancePath:instancePath+"/people/" + i1+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data20};
if(vErrors === null){
vErrors = [err66];
}
else {
vErrors.push(err66);
}
errors++;
}
if(!pattern4.test(data20)){
const err67 = {instancePath:instancePath+"/people/" + i1+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data20};
if(vErrors === null){
vErrors = [err67];
}
else {
vErrors.push(err67);
}
errors++;
}
}
else {
const err68 = {instancePath:instancePath+"/people/" + i1+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data20};
if(vErrors === null){
vErrors = [err68];
}
else {
vErrors.push(err68);
}
errors++;
}
}
if(data19.name !== undefined){
let data21 = data19.name;
if(typeof data21 === "string"){
if(func2(data21) < 1){
const err69 = {instancePath:instancePath+"/people/" + i1+"/name",schemaPath:"#/properties/people/items/properties/name/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.people.items.properties.name,data:data21};
if(vErrors === null){
vErrors = [err69];
}
else {
vErrors.push(err69);
}
errors++;
}
}
else {
const err70 = {instancePath:instancePath+"/people/" + i1+"/name",schemaPath:"#/properties/people/items/properties/name/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.people.items.properties.name.type,parentSchema:schema53.properties.people.items.properties.name,data:data21};
if(vErrors === null){
vErrors = [err70];
}
else {
vErrors.push(err70);
}
errors++;
}
}
if(data19.job !== undefined){
let data22 = data19.job;
if(typeof data22 === "string"){
if(func2(data22) < 1){
const err71 = {instancePath:instancePath+"/people/" + i1+"/job",schemaPath:"#/properties/people/items/properties/job/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.people.items.properties.job,data:data22};
if(vErrors === null){
vErrors = [err71];
}
else {
vErrors.push(err71);
}
errors++;
}
}
else {
const err72 = {instancePath:instancePath+"/people/" + i1+"/job",schemaPath:"#/properties/people/items/properties/job/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.people.items.properties.job.type,parentSchema:schema53.properties.people.items.properties.job,data:data22};
if(vErrors === null){
vErrors = [err72];
}
else {
vErrors.push(err72);
}
errors++;
}
}
if(data19.roles !== undefined){
let data23 = data19.roles;
if(Array.isArray(data23)){
if(data23.length < 1){
const err73 = {instancePath:instancePath+"/people/" + i1+"/roles",schemaPath:"#/properties/people/items/properties/roles/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema53.properties.people.items.properties.roles,data:data23};
if(vErrors === null){
vErrors = [err73];
}
else {
vErrors.push(err73);
}
errors++;
}
const len2 = data23.length;
for(let i2=0; i2<len2; i2++){
let data24 = data23[i2];
if(typeof data24 === "string"){
if(func2(data24) > 80){
const err74 = {instancePath:instancePath+"/people/" + i1+"/roles/" + i2,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data24};
if(vErrors === null){
vErrors = [err74];
}
else {
vErrors.push(err74);
}
errors++;
}
if(!pattern4.test(data24)){
const err75 = {instancePath:instancePath+"/people/" + i1+"/roles/" + i2,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data24};
if(vErrors === null){
vErrors = [err75];
}
else {
vErrors.push(err75);
}
errors++;
}
}
else {
const err76 = {instancePath:instancePath+"/people/" + i1+"/roles/" + i2,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data24};
if(vErrors === null){
vErrors = [err76];
}
else {
vErrors.push(err76);
}
errors++;
}
}
let i3 = data23.length;
let j0;
if(i3 > 1){
outer0:
for(;i3--;){
for(j0 = i3; j0--;){
if(func0(data23[i3], data23[j0])){
const err77 = {instancePath:instancePath+"/people/" + i1+"/roles",schemaPath:"#/properties/people/items/properties/roles/uniqueItems",keyword:"uniqueItems",params:{i: i3, j: j0},message:"must NOT have duplicate items (items ## "+j0+" and "+i3+" are identical)",schema:true,parentSchema:schema53.properties.people.items.properties.roles,data:data23};
if(vErrors === null){
vErrors = [err77];
}
else {
vErrors.push(err77);
}
errors++;
break outer0;
}
}
}
}
}
else {
const err78 = {instancePath:instancePath+"/people/" + i1+"/roles",schemaPath:"#/properties/people/items/properties/roles/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema53.properties.people.items.properties.roles.type,parentSchema:schema53.properties.people.items.properties.roles,data:data23};
if(vErrors === null){
vErrors = [err78];
}
else {
vErrors.push(err78);
}
errors++;
}
}
}
else {
const err79 = {instancePath:instancePath+"/people/" + i1,schemaPath:"#/properties/people/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema53.properties.people.items.type,parentSchema:schema53.properties.people.items,data:data19};
if(vErrors === null){
vErrors = [err79];
}
else {
vErrors.push(err79);
}
errors++;
}
}
}
else {
const err80 = {instancePath:instancePath+"/people",schemaPath:"#/properties/people/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema53.properties.people.type,parentSchema:schema53.properties.people,data:data18};
if(vErrors === null){
vErrors = [err80];
}
else {
vErrors.push(err80);
}
errors++;
}
}
if(data.rooms !== undefined){
let data25 = data.rooms;
if(Array.isArray(data25)){
if(data25.length < 1){
const err81 = {instancePath:instancePath+"/rooms",schemaPath:"#/properties/rooms/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema53.properties.rooms,data:data25};
if(vErrors === null){
vErrors = [err81];
}
else {
vErrors.push(err81);
}
errors++;
}
const len3 = data25.length;
for(let i4=0; i4<len3; i4++){
let data26 = data25[i4];
if(data26 && typeof data26 == "object" && !Array.isArray(data26)){
if(data26.id === undefined){
const err82 = {instancePath:instancePath+"/rooms/" + i4,schemaPath:"#/properties/rooms/items/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema53.properties.rooms.items.required,parentSchema:schema53.properties.rooms.items,data:data26};
if(vErrors === null){
vErrors = [err82];
}
else {
vErrors.push(err82);
}
errors++;
}
if(data26.name === undefined){
const err83 = {instancePath:instancePath+"/rooms/" + i4,schemaPath:"#/properties/rooms/items/required",keyword:"required",params:{missingProperty: "name"},message:"must have required property '"+"name"+"'",schema:schema53.properties.rooms.items.required,parentSchema:schema53.properties.rooms.items,data:data26};
if(vErrors === null){
vErrors = [err83];
}
else {
vErrors.push(err83);
}
errors++;
}
if(data26.zones === undefined){
const err84 = {instancePath:instancePath+"/rooms/" + i4,schemaPath:"#/properties/rooms/items/required",keyword:"required",params:{missingProperty: "zones"},message:"must have required property '"+"zones"+"'",schema:schema53.properties.rooms.items.required,parentSchema:schema53.properties.rooms.items,data:data26};
if(vErrors === null){
vErrors = [err84];
}
else {
vErrors.push(err84);
}
errors++;
}
for(const key5 in data26){
if(!((((key5 === "id") || (key5 === "name")) || (key5 === "zones")) || (key5 === "note"))){
const err85 = {instancePath:instancePath+"/rooms/" + i4,schemaPath:"#/properties/rooms/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key5},message:"must NOT have additional properties",schema:false,parentSchema:schema53.properties.rooms.items,data:data26};
if(vErrors === null){
vErrors = [err85];
}
else {
vErrors.push(err85);
}
errors++;
}
}
if(data26.id !== undefined){
let data27 = data26.id;
if(typeof data27 === "string"){
if(func2(data27) > 80){
const err86 = {instancePath:instancePath+"/rooms/" + i4+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data27};
if(vErrors === null){
vErrors = [err86];
}
else {
vErrors.push(err86);
}
errors++;
}
if(!pattern4.test(data27)){
const err87 = {instancePath:instancePath+"/rooms/" + i4+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data27};
if(vErrors === null){
vErrors = [err87];
}
else {
vErrors.push(err87);
}
errors++;
}
}
else {
const err88 = {instancePath:instancePath+"/rooms/" + i4+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data27};
if(vErrors === null){
vErrors = [err88];
}
else {
vErrors.push(err88);
}
errors++;
}
}
if(data26.name !== undefined){
let data28 = data26.name;
if(typeof data28 === "string"){
if(func2(data28) < 1){
const err89 = {instancePath:instancePath+"/rooms/" + i4+"/name",schemaPath:"#/properties/rooms/items/properties/name/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.rooms.items.properties.name,data:data28};
if(vErrors === null){
vErrors = [err89];
}
else {
vErrors.push(err89);
}
errors++;
}
}
else {
const err90 = {instancePath:instancePath+"/rooms/" + i4+"/name",schemaPath:"#/properties/rooms/items/properties/name/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.rooms.items.properties.name.type,parentSchema:schema53.properties.rooms.items.properties.name,data:data28};
if(vErrors === null){
vErrors = [err90];
}
else {
vErrors.push(err90);
}
errors++;
}
}
if(data26.zones !== undefined){
let data29 = data26.zones;
if(Array.isArray(data29)){
if(data29.length < 1){
const err91 = {instancePath:instancePath+"/rooms/" + i4+"/zones",schemaPath:"#/properties/rooms/items/properties/zones/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema53.properties.rooms.items.properties.zones,data:data29};
if(vErrors === null){
vErrors = [err91];
}
else {
vErrors.push(err91);
}
errors++;
}
const len4 = data29.length;
for(let i5=0; i5<len4; i5++){
let data30 = data29[i5];
if(typeof data30 === "string"){
if(func2(data30) > 80){
const err92 = {instancePath:instancePath+"/rooms/" + i4+"/zones/" + i5,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data30};
if(vErrors === null){
vErrors = [err92];
}
else {
vErrors.push(err92);
}
errors++;
}
if(!pattern4.test(data30)){
const err93 = {instancePath:instancePath+"/rooms/" + i4+"/zones/" + i5,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data30};
if(vErrors === null){
vErrors = [err93];
}
else {
vErrors.push(err93);
}
errors++;
}
}
else {
const err94 = {instancePath:instancePath+"/rooms/" + i4+"/zones/" + i5,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data30};
if(vErrors === null){
vErrors = [err94];
}
else {
vErrors.push(err94);
}
errors++;
}
}
let i6 = data29.length;
let j1;
if(i6 > 1){
outer1:
for(;i6--;){
for(j1 = i6; j1--;){
if(func0(data29[i6], data29[j1])){
const err95 = {instancePath:instancePath+"/rooms/" + i4+"/zones",schemaPath:"#/properties/rooms/items/properties/zones/uniqueItems",keyword:"uniqueItems",params:{i: i6, j: j1},message:"must NOT have duplicate items (items ## "+j1+" and "+i6+" are identical)",schema:true,parentSchema:schema53.properties.rooms.items.properties.zones,data:data29};
if(vErrors === null){
vErrors = [err95];
}
else {
vErrors.push(err95);
}
errors++;
break outer1;
}
}
}
}
}
else {
const err96 = {instancePath:instancePath+"/rooms/" + i4+"/zones",schemaPath:"#/properties/rooms/items/properties/zones/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema53.properties.rooms.items.properties.zones.type,parentSchema:schema53.properties.rooms.items.properties.zones,data:data29};
if(vErrors === null){
vErrors = [err96];
}
else {
vErrors.push(err96);
}
errors++;
}
}
if(data26.note !== undefined){
let data31 = data26.note;
if(typeof data31 === "string"){
if(func2(data31) > 2000){
const err97 = {instancePath:instancePath+"/rooms/" + i4+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data31};
if(vErrors === null){
vErrors = [err97];
}
else {
vErrors.push(err97);
}
errors++;
}
if(func2(data31) < 1){
const err98 = {instancePath:instancePath+"/rooms/" + i4+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data31};
if(vErrors === null){
vErrors = [err98];
}
else {
vErrors.push(err98);
}
errors++;
}
}
else {
const err99 = {instancePath:instancePath+"/rooms/" + i4+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data31};
if(vErrors === null){
vErrors = [err99];
}
else {
vErrors.push(err99);
}
errors++;
}
}
}
else {
const err100 = {instancePath:instancePath+"/rooms/" + i4,schemaPath:"#/properties/rooms/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema53.properties.rooms.items.type,parentSchema:schema53.properties.rooms.items,data:data26};
if(vErrors === null){
vErrors = [err100];
}
else {
vErrors.push(err100);
}
errors++;
}
}
}
else {
const err101 = {instancePath:instancePath+"/rooms",schemaPath:"#/properties/rooms/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema53.properties.rooms.type,parentSchema:schema53.properties.rooms,data:data25};
if(vErrors === null){
vErrors = [err101];
}
else {
vErrors.push(err101);
}
errors++;
}
}
if(data.contacts !== undefined){
let data32 = data.contacts;
if(Array.isArray(data32)){
if(data32.length < 1){
const err102 = {instancePath:instancePath+"/contacts",schemaPath:"#/properties/contacts/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema53.properties.contacts,data:data32};
if(vErrors === null){
vErrors = [err102];
}
else {
vErrors.push(err102);
}
errors++;
}
const len5 = data32.length;
for(let i7=0; i7<len5; i7++){
let data33 = data32[i7];
if(data33 && typeof data33 == "object" && !Array.isArray(data33)){
if(data33.id === undefined){
const err103 = {instancePath:instancePath+"/contacts/" + i7,schemaPath:"#/properties/contacts/items/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema53.properties.contacts.items.required,parentSchema:schema53.properties.contacts.items,data:data33};
if(vErrors === null){
vErrors = [err103];
}
else {
vErrors.push(err103);
}
errors++;
}
if(data33.for === undefined){
const err104 = {instancePath:instancePath+"/contacts/" + i7,schemaPath:"#/properties/contacts/items/required",keyword:"required",params:{missingProperty: "for"},message:"must have required property '"+"for"+"'",schema:schema53.properties.contacts.items.required,parentSchema:schema53.properties.contacts.items,data:data33};
if(vErrors === null){
vErrors = [err104];
}
else {
vErrors.push(err104);
}
errors++;
}
if(data33.name === undefined){
const err105 = {instancePath:instancePath+"/contacts/" + i7,schemaPath:"#/properties/contacts/items/required",keyword:"required",params:{missingProperty: "name"},message:"must have required property '"+"name"+"'",schema:schema53.properties.contacts.items.required,parentSchema:schema53.properties.contacts.items,data:data33};
if(vErrors === null){
vErrors = [err105];
}
else {
vErrors.push(err105);
}
errors++;
}
if(data33.phone === undefined){
const err106 = {instancePath:instancePath+"/contacts/" + i7,schemaPath:"#/properties/contacts/items/required",keyword:"required",params:{missingProperty: "phone"},message:"must have required property '"+"phone"+"'",schema:schema53.properties.contacts.items.required,parentSchema:schema53.properties.contacts.items,data:data33};
if(vErrors === null){
vErrors = [err106];
}
else {
vErrors.push(err106);
}
errors++;
}
for(const key6 in data33){
if(!(((((key6 === "id") || (key6 === "for")) || (key6 === "name")) || (key6 === "phone")) || (key6 === "note"))){
const err107 = {instancePath:instancePath+"/contacts/" + i7,schemaPath:"#/properties/contacts/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key6},message:"must NOT have additional properties",schema:false,parentSchema:schema53.properties.contacts.items,data:data33};
if(vErrors === null){
vErrors = [err107];
}
else {
vErrors.push(err107);
}
errors++;
}
}
if(data33.id !== undefined){
let data34 = data33.id;
if(typeof data34 === "string"){
if(func2(data34) > 80){
const err108 = {instancePath:instancePath+"/contacts/" + i7+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data34};
if(vErrors === null){
vErrors = [err108];
}
else {
vErrors.push(err108);
}
errors++;
}
if(!pattern4.test(data34)){
const err109 = {instancePath:instancePath+"/contacts/" + i7+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data34};
if(vErrors === null){
vErrors = [err109];
}
else {
vErrors.push(err109);
}
errors++;
}
}
else {
const err110 = {instancePath:instancePath+"/contacts/" + i7+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data34};
if(vErrors === null){
vErrors = [err110];
}
else {
vErrors.push(err110);
}
errors++;
}
}
if(data33.for !== undefined){
let data35 = data33.for;
if(typeof data35 === "string"){
if(func2(data35) > 120){
const err111 = {instancePath:instancePath+"/contacts/" + i7+"/for",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data35};
if(vErrors === null){
vErrors = [err111];
}
else {
vErrors.push(err111);
}
errors++;
}
if(func2(data35) < 1){
const err112 = {instancePath:instancePath+"/contacts/" + i7+"/for",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data35};
if(vErrors === null){
vErrors = [err112];
}
else {
vErrors.push(err112);
}
errors++;
}
}
else {
const err113 = {instancePath:instancePath+"/contacts/" + i7+"/for",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data35};
if(vErrors === null){
vErrors = [err113];
}
else {
vErrors.push(err113);
}
errors++;
}
}
if(data33.name !== undefined){
let data36 = data33.name;
if(typeof data36 === "string"){
if(func2(data36) < 1){
const err114 = {instancePath:instancePath+"/contacts/" + i7+"/name",schemaPath:"#/properties/contacts/items/properties/name/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.contacts.items.properties.name,data:data36};
if(vErrors === null){
vErrors = [err114];
}
else {
vErrors.push(err114);
}
errors++;
}
}
else {
const err115 = {instancePath:instancePath+"/contacts/" + i7+"/name",schemaPath:"#/properties/contacts/items/properties/name/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.contacts.items.properties.name.type,parentSchema:schema53.properties.contacts.items.properties.name,data:data36};
if(vErrors === null){
vErrors = [err115];
}
else {
vErrors.push(err115);
}
errors++;
}
}
if(data33.phone !== undefined){
let data37 = data33.phone;
if(typeof data37 === "string"){
if(func2(data37) < 1){
const err116 = {instancePath:instancePath+"/contacts/" + i7+"/phone",schemaPath:"#/properties/contacts/items/properties/phone/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.contacts.items.properties.phone,data:data37};
if(vErrors === null){
vErrors = [err116];
}
else {
vErrors.push(err116);
}
errors++;
}
}
else {
const err117 = {instancePath:instancePath+"/contacts/" + i7+"/phone",schemaPath:"#/properties/contacts/items/properties/phone/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.contacts.items.properties.phone.type,parentSchema:schema53.properties.contacts.items.properties.phone,data:data37};
if(vErrors === null){
vErrors = [err117];
}
else {
vErrors.push(err117);
}
errors++;
}
}
if(data33.note !== undefined){
let data38 = data33.note;
if(typeof data38 === "string"){
if(func2(data38) > 2000){
const err118 = {instancePath:instancePath+"/contacts/" + i7+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data38};
if(vErrors === null){
vErrors = [err118];
}
else {
vErrors.push(err118);
}
errors++;
}
if(func2(data38) < 1){
const err119 = {instancePath:instancePath+"/contacts/" + i7+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data38};
if(vErrors === null){
vErrors = [err119];
}
else {
vErrors.push(err119);
}
errors++;
}
}
else {
const err120 = {instancePath:instancePath+"/contacts/" + i7+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data38};
if(vErrors === null){
vErrors = [err120];
}
else {
vErrors.push(err120);
}
errors++;
}
}
}
else {
const err121 = {instancePath:instancePath+"/contacts/" + i7,schemaPath:"#/properties/contacts/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema53.properties.contacts.items.type,parentSchema:schema53.properties.contacts.items,data:data33};
if(vErrors === null){
vErrors = [err121];
}
else {
vErrors.push(err121);
}
errors++;
}
}
}
else {
const err122 = {instancePath:instancePath+"/contacts",schemaPath:"#/properties/contacts/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema53.properties.contacts.type,parentSchema:schema53.properties.contacts,data:data32};
if(vErrors === null){
vErrors = [err122];
}
else {
vErrors.push(err122);
}
errors++;
}
}
if(data.facts !== undefined){
if(!(validate35(data.facts, {instancePath:instancePath+"/facts",parentData:data,parentDataProperty:"facts",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate35.errors : vErrors.concat(validate35.errors);
errors = vErrors.length;
}
}
if(data.supplies !== undefined){
let data40 = data.supplies;
if(Array.isArray(data40)){
if(data40.length < 1){
const err123 = {instancePath:instancePath+"/supplies",schemaPath:"#/properties/supplies/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema53.properties.supplies,data:data40};
if(vErrors === null){
vErrors = [err123];
}
else {
vErrors.push(err123);
}
errors++;
}
const len6 = data40.length;
for(let i8=0; i8<len6; i8++){
let data41 = data40[i8];
if(data41 && typeof data41 == "object" && !Array.isArray(data41)){
if(data41.for === undefined){
const err124 = {instancePath:instancePath+"/supplies/" + i8,schemaPath:"#/properties/supplies/items/required",keyword:"required",params:{missingProperty: "for"},message:"must have required property '"+"for"+"'",schema:schema53.properties.supplies.items.required,parentSchema:schema53.properties.supplies.items,data:data41};
if(vErrors === null){
vErrors = [err124];
}
else {
vErrors.push(err124);
}
errors++;
}
if(data41.name === undefined){
const err125 = {instancePath:instancePath+"/supplies/" + i8,schemaPath:"#/properties/supplies/items/required",keyword:"required",params:{missingProperty: "name"},message:"must have required property '"+"name"+"'",schema:schema53.properties.supplies.items.required,parentSchema:schema53.properties.supplies.items,data:data41};
if(vErrors === null){
vErrors = [err125];
}
else {
vErrors.push(err125);
}
errors++;
}
if(data41.use === undefined){
const err126 = {instancePath:instancePath+"/supplies/" + i8,schemaPath:"#/properties/supplies/items/required",keyword:"required",params:{missingProperty: "use"},message:"must have required property '"+"use"+"'",schema:schema53.properties.supplies.items.required,parentSchema:schema53.properties.supplies.items,data:data41};
if(vErrors === null){
vErrors = [err126];
}
else {
vErrors.push(err126);
}
errors++;
}
for(const key7 in data41){
if(!((((key7 === "for") || (key7 === "name")) || (key7 === "use")) || (key7 === "where"))){
const err127 = {instancePath:instancePath+"/supplies/" + i8,schemaPath:"#/properties/supplies/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key7},message:"must NOT have additional properties",schema:false,parentSchema:schema53.properties.supplies.items,data:data41};
if(vErrors === null){
vErrors = [err127];
}
else {
vErrors.push(err127);
}
errors++;
}
}
if(data41.for !== undefined){
let data42 = data41.for;
if(typeof data42 === "string"){
if(func2(data42) > 120){
const err128 = {instancePath:instancePath+"/supplies/" + i8+"/for",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data42};
if(vErrors === null){
vErrors = [err128];
}
else {
vErrors.push(err128);
}
errors++;
}
if(func2(data42) < 1){
const err129 = {instancePath:instancePath+"/supplies/" + i8+"/for",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data42};
if(vErrors === null){
vErrors = [err129];
}
else {
vErrors.push(err129);
}
errors++;
}
}
else {
const err130 = {instancePath:instancePath+"/supplies/" + i8+"/for",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data42};
if(vErrors === null){
vErrors = [err130];
}
else {
vErrors.push(err130);
}
errors++;
}
}
if(data41.name !== undefined){
let data43 = data41.name;
if(typeof data43 === "string"){
if(func2(data43) < 1){
const err131 = {instancePath:instancePath+"/supplies/" + i8+"/name",schemaPath:"#/properties/supplies/items/properties/name/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.supplies.items.properties.name,data:data43};
if(vErrors === null){
vErrors = [err131];
}
else {
vErrors.push(err131);
}
errors++;
}
}
else {
const err132 = {instancePath:instancePath+"/supplies/" + i8+"/name",schemaPath:"#/properties/supplies/items/properties/name/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.supplies.items.properties.name.type,parentSchema:schema53.properties.supplies.items.properties.name,data:data43};
if(vErrors === null){
vErrors = [err132];
}
else {
vErrors.push(err132);
}
errors++;
}
}
if(data41.use !== undefined){
let data44 = data41.use;
if(typeof data44 === "string"){
if(func2(data44) > 2000){
const err133 = {instancePath:instancePath+"/supplies/" + i8+"/use",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data44};
if(vErrors === null){
vErrors = [err133];
}
else {
vErrors.push(err133);
}
errors++;
}
if(func2(data44) < 1){
const err134 = {instancePath:instancePath+"/supplies/" + i8+"/use",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data44};
if(vErrors === null){
vErrors = [err134];
}
else {
vErrors.push(err134);
}
errors++;
}
}
else {
const err135 = {instancePath:instancePath+"/supplies/" + i8+"/use",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data44};
if(vErrors === null){
vErrors = [err135];
}
else {
vErrors.push(err135);
}
errors++;
}
}
if(data41.where !== undefined){
let data45 = data41.where;
if(typeof data45 === "string"){
if(func2(data45) < 1){
const err136 = {instancePath:instancePath+"/supplies/" + i8+"/where",schemaPath:"#/properties/supplies/items/properties/where/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema53.properties.supplies.items.properties.where,data:data45};
if(vErrors === null){
vErrors = [err136];
}
else {
vErrors.push(err136);
}
errors++;
}
}
else {
const err137 = {instancePath:instancePath+"/supplies/" + i8+"/where",schemaPath:"#/properties/supplies/items/properties/where/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema53.properties.supplies.items.properties.where.type,parentSchema:schema53.properties.supplies.items.properties.where,data:data45};
if(vErrors === null){
vErrors = [err137];
}
else {
vErrors.push(err137);
}
errors++;
}
}
}
else {
const err138 = {instancePath:instancePath+"/supplies/" + i8,schemaPath:"#/properties/supplies/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema53.properties.supplies.items.type,parentSchema:schema53.properties.supplies.items,data:data41};
if(vErrors === null){
vErrors = [err138];
}
else {
vErrors.push(err138);
}
errors++;
}
}
}
else {
const err139 = {instancePath:instancePath+"/supplies",schemaPath:"#/properties/supplies/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema53.properties.supplies.type,parentSchema:schema53.properties.supplies,data:data40};
if(vErrors === null){
vErrors = [err139];
}
else {
vErrors.push(err139);
}
errors++;
}
}
if(data.about !== undefined){
let data46 = data.about;
if(typeof data46 === "string"){
if(func2(data46) > 2000){
const err140 = {instancePath:instancePath+"/about",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data46};
if(vErrors === null){
vErrors = [err140];
}
else {
vErrors.push(err140);
}
errors++;
}
if(func2(data46) < 1){
const err141 = {instancePath:instancePath+"/about",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data46};
if(vErrors === null){
vErrors = [err141];
}
else {
vErrors.push(err141);
}
errors++;
}
}
else {
const err142 = {instancePath:instancePath+"/about",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data46};
if(vErrors === null){
vErrors = [err142];
}
else {
vErrors.push(err142);
}
errors++;
}
}
}
else {
const err143 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema53.type,parentSchema:schema53,data};
if(vErrors === null){
vErrors = [err143];
}
else {
vErrors.push(err143);
}
errors++;
}
validate34.errors = vErrors;
return errors === 0;
}
validate34.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_decision = validate37;
const schema74 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"decision.json","title":"Decision","description":"A question with outcomes, or a choice among the programs of the clinic's machines.","type":"object","additionalProperties":false,"required":["kind","id","title","stage","question","rules"],"properties":{"kind":{"const":"decision","description":"The kind of document; it picks this schema."},"id":{"$ref":"defs.json#/$defs/id"},"title":{"$ref":"defs.json#/$defs/label","description":"Heading in the manual."},"stage":{"$ref":"defs.json#/$defs/id","description":"Term of the domain stage: the chapter it is printed in."},"order":{"type":"integer","minimum":1,"maximum":99,"description":"Place within its chapter: lower comes first (default 50)."},"question":{"type":"string","minLength":1,"description":"The question as a person would put it."},"about":{"$ref":"defs.json#/$defs/text","description":"What the decision covers, in a sentence or two."},"only-when":{"$ref":"defs.json#/$defs/condition","description":"Printed only for clinics where this holds."},"register":{"$ref":"defs.json#/$defs/label","description":"Column title in the instrument register; only for decisions that the register can answer."},"outcomes":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":2,"uniqueItems":true,"description":"In a verdict: from the least to the most restrictive."},"say":{"type":"object","additionalProperties":{"$ref":"defs.json#/$defs/text"},"propertyNames":{"$ref":"defs.json#/$defs/id"},"description":"In a verdict: what each outcome says to a person, in a few words."},"otherwise":{"$ref":"defs.json#/$defs/id","description":"In a verdict: what holds where no rule speaks. Never the least restrictive outcome."},"choose":{"const":"program","description":"Marks a choice."},"from":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"In a choice: machine kinds whose programs are looked at."},"prefer":{"type":"array","items":{"type":"object","additionalProperties":false,"required":["fact","first"],"properties":{"fact":{"$ref":"defs.json#/$defs/id","description":"A quantity or count stated by programs."},"first":{"enum":["lowest","highest"]}}},"minItems":1,"description":"In a choice: how acceptable programs are ranked."},"gaps":{"type":"array","items":{"type":"object","additionalProperties":false,"required":["because"],"properties":{"when":{"$ref":"defs.json#/$defs/condition","description":"Where no rule speaks on purpose (default: wherever none does)."},"because":{"$ref":"defs.json#/$defs/text","description":"Why no rule is needed there."}}},"minItems":1,"description":"Situations that no rule speaks about on purpose; `analyse` and `check` are quiet about them."},"rules":{"type":"array","items":{"$ref":"defs.json#/$defs/rule"},"minItems":1}}};

function validate38(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate38.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(Object.keys(data).length < 1){
const err0 = {instancePath,schemaPath:"#/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
for(const key0 in data){
if(!(((key0 === "all") || (key0 === "any")) || (key0 === "not"))){
if(!(validate23(data[key0], {instancePath:instancePath+"/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"),parentData:data,parentDataProperty:key0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate23.errors : vErrors.concat(validate23.errors);
errors = vErrors.length;
}
}
}
if(data.all !== undefined){
let data1 = data.all;
if(Array.isArray(data1)){
if(data1.length < 1){
const err1 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
const len0 = data1.length;
for(let i0=0; i0<len0; i0++){
if(!(validate22(data1[i0], {instancePath:instancePath+"/all/" + i0,parentData:data1,parentDataProperty:i0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err2 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.all.type,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.any !== undefined){
let data3 = data.any;
if(Array.isArray(data3)){
if(data3.length < 1){
const err3 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
const len1 = data3.length;
for(let i1=0; i1<len1; i1++){
if(!(validate22(data3[i1], {instancePath:instancePath+"/any/" + i1,parentData:data3,parentDataProperty:i1,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err4 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.any.type,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.not !== undefined){
if(!(validate22(data.not, {instancePath:instancePath+"/not",parentData:data,parentDataProperty:"not",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err5 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema37.type,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
validate38.errors = vErrors;
return errors === 0;
}
validate38.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const schema88 = {"type":"object","additionalProperties":false,"required":["id","when","because","source"],"properties":{"id":{"$ref":"defs.json#/$defs/id","description":"Unique within its decision."},"when":{"$ref":"defs.json#/$defs/condition"},"outcome":{"$ref":"defs.json#/$defs/id","description":"In a verdict: the outcome that holds when the rule applies."},"needs":{"$ref":"defs.json#/$defs/condition","description":"In a choice: what a program must offer when the rule applies, as tests on facts stated by machine sheets."},"adds-only":{"type":"boolean","description":"In a choice: the rule adds needs, but by itself does not answer the question (so adding it can only make the answer stricter)."},"because":{"$ref":"defs.json#/$defs/text","description":"Why, in one or two sentences that the person at the sink can use."},"instead":{"$ref":"defs.json#/$defs/id","description":"Id of the procedure to follow instead."},"cautions":{"type":"array","items":{"$ref":"defs.json#/$defs/text"},"minItems":1,"description":"What can hurt someone here."},"from":{"$ref":"defs.json#/$defs/date","description":"First day on which the rule holds."},"until":{"$ref":"defs.json#/$defs/date","description":"Last day on which the rule holds."},"source":{"$ref":"defs.json#/$defs/source","description":"Where this is from."},"examples":{"type":"array","items":{"$ref":"defs.json#/$defs/example"},"minItems":1,"description":"At least one situation in which it applies and one in which it does not."}},"description":"One rule of a decision."};
const schema96 = {"type":["string","object"],"pattern":"^[a-z0-9]+(?:-[a-z0-9]+)*$","description":"A source id alone (only for `common-practice` and `clinic`), or the id with clause and evidence.","additionalProperties":false,"required":["id"],"properties":{"id":{"$ref":"defs.json#/$defs/id","description":"Id of an entry of the bibliography."},"at":{"type":"string","minLength":1,"description":"Clause, table or page."},"evidence":{"$ref":"defs.json#/$defs/evidence"},"checked":{"$ref":"defs.json#/$defs/date","description":"When the value was last compared with the source."},"note":{"$ref":"defs.json#/$defs/text","description":"What a reader should know, such as where sources disagree."}}};
const schema98 = {"enum":["read","recalled","computed","decided"],"description":"How the value was checked: read in the source, recalled from memory, computed from a formula in the source, or decided by the clinic."};
const pattern40 = new RegExp("^[a-z0-9]+(?:-[a-z0-9]+)*$", "u");

function validate48(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate48.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if((typeof data !== "string") && (!(data && typeof data == "object" && !Array.isArray(data)))){
const err0 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: schema96.type},message:"must be string,object",schema:schema96.type,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(typeof data === "string"){
if(!pattern40.test(data)){
const err1 = {instancePath,schemaPath:"#/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*$",parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema96.required,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
for(const key0 in data){
if(!(((((key0 === "id") || (key0 === "at")) || (key0 === "evidence")) || (key0 === "checked")) || (key0 === "note"))){
const err3 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err4 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(!pattern4.test(data0)){
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
else {
const err6 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
if(data.at !== undefined){
let data1 = data.at;
if(typeof data1 === "string"){
if(func2(data1) < 1){
const err7 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
else {
const err8 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema96.properties.at.type,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.evidence !== undefined){
let data2 = data.evidence;
if(!((((data2 === "read") || (data2 === "recalled")) || (data2 === "computed")) || (data2 === "decided"))){
const err9 = {instancePath:instancePath+"/evidence",schemaPath:"defs.json#/$defs/evidence/enum",keyword:"enum",params:{allowedValues: schema98.enum},message:"must be equal to one of the allowed values",schema:schema98.enum,parentSchema:schema98,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
if(data.checked !== undefined){
let data3 = data.checked;
if(typeof data3 === "string"){
if(!pattern18.test(data3)){
const err10 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
else {
const err11 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.note !== undefined){
let data4 = data.note;
if(typeof data4 === "string"){
if(func2(data4) > 2000){
const err12 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data4) < 1){
const err13 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
}
validate48.errors = vErrors;
return errors === 0;
}
validate48.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const schema101 = {"type":"object","additionalProperties":false,"required":["given","applies"],"properties":{"given":{"$ref":"defs.json#/$defs/situation"},"applies":{"type":"boolean","description":"Whether the rule is true in that situation."}},"description":"A situation and whether the rule applies in it. Examples are run by `rulebook check`."};

function validate51(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate51.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
for(const key0 in data){
const _errs1 = errors;
if(typeof key0 === "string"){
if(func2(key0) > 80){
const err0 = {instancePath,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(!pattern4.test(key0)){
const err1 = {instancePath,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
else {
const err2 = {instancePath,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
var valid0 = _errs1 === errors;
if(!valid0){
const err3 = {instancePath,schemaPath:"#/propertyNames",keyword:"propertyNames",params:{propertyName: key0},message:"property name must be valid",schema:schema45.propertyNames,parentSchema:schema45,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
for(const key1 in data){
let data0 = data[key1];
if((((typeof data0 !== "string") && (!((typeof data0 == "number") && (isFinite(data0))))) && (typeof data0 !== "boolean")) && (!(Array.isArray(data0)))){
const err4 = {instancePath:instancePath+"/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/additionalProperties/type",keyword:"type",params:{type: schema45.additionalProperties.type},message:"must be string,number,boolean,array",schema:schema45.additionalProperties.type,parentSchema:schema45.additionalProperties,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(Array.isArray(data0)){
const len0 = data0.length;
for(let i0=0; i0<len0; i0++){
let data1 = data0[i0];
if(typeof data1 !== "string"){
const err5 = {instancePath:instancePath+"/" + key1.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + i0,schemaPath:"#/additionalProperties/items/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema45.additionalProperties.items.type,parentSchema:schema45.additionalProperties.items,data:data1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
}
}
}
else {
const err6 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema45.type,parentSchema:schema45,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
validate51.errors = vErrors;
return errors === 0;
}
validate51.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate50(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate50.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.given === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "given"},message:"must have required property '"+"given"+"'",schema:schema101.required,parentSchema:schema101,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.applies === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "applies"},message:"must have required property '"+"applies"+"'",schema:schema101.required,parentSchema:schema101,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!((key0 === "given") || (key0 === "applies"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema101,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.given !== undefined){
if(!(validate51(data.given, {instancePath:instancePath+"/given",parentData:data,parentDataProperty:"given",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate51.errors : vErrors.concat(validate51.errors);
errors = vErrors.length;
}
}
if(data.applies !== undefined){
let data1 = data.applies;
if(typeof data1 !== "boolean"){
const err3 = {instancePath:instancePath+"/applies",schemaPath:"#/properties/applies/type",keyword:"type",params:{type: "boolean"},message:"must be boolean",schema:schema101.properties.applies.type,parentSchema:schema101.properties.applies,data:data1};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
}
else {
const err4 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema101.type,parentSchema:schema101,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
validate50.errors = vErrors;
return errors === 0;
}
validate50.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate45(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate45.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema88.required,parentSchema:schema88,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.when === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "when"},message:"must have required property '"+"when"+"'",schema:schema88.required,parentSchema:schema88,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data.because === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema88.required,parentSchema:schema88,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
if(data.source === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema88.required,parentSchema:schema88,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
for(const key0 in data){
if(!(func1.call(schema88.properties, key0))){
const err4 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema88,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(!pattern4.test(data0)){
const err6 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
if(data.when !== undefined){
if(!(validate22(data.when, {instancePath:instancePath+"/when",parentData:data,parentDataProperty:"when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
if(data.outcome !== undefined){
let data2 = data.outcome;
if(typeof data2 === "string"){
if(func2(data2) > 80){
const err8 = {instancePath:instancePath+"/outcome",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data2};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(!pattern4.test(data2)){
const err9 = {instancePath:instancePath+"/outcome",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
else {
const err10 = {instancePath:instancePath+"/outcome",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
if(data.needs !== undefined){
if(!(validate22(data.needs, {instancePath:instancePath+"/needs",parentData:data,parentDataProperty:"needs",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
if(data["adds-only"] !== undefined){
let data4 = data["adds-only"];
if(typeof data4 !== "boolean"){
const err11 = {instancePath:instancePath+"/adds-only",schemaPath:"#/properties/adds-only/type",keyword:"type",params:{type: "boolean"},message:"must be boolean",schema:schema88.properties["adds-only"].type,parentSchema:schema88.properties["adds-only"],data:data4};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.because !== undefined){
let data5 = data.because;
if(typeof data5 === "string"){
if(func2(data5) > 2000){
const err12 = {instancePath:instancePath+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data5) < 1){
const err13 = {instancePath:instancePath+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
if(data.instead !== undefined){
let data6 = data.instead;
if(typeof data6 === "string"){
if(func2(data6) > 80){
const err15 = {instancePath:instancePath+"/instead",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data6};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(!pattern4.test(data6)){
const err16 = {instancePath:instancePath+"/instead",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data6};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
else {
const err17 = {instancePath:instancePath+"/instead",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data6};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
if(data.cautions !== undefined){
let data7 = data.cautions;
if(Array.isArray(data7)){
if(data7.length < 1){
const err18 = {instancePath:instancePath+"/cautions",schemaPath:"#/properties/cautions/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema88.properties.cautions,data:data7};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
const len0 = data7.length;
for(let i0=0; i0<len0; i0++){
let data8 = data7[i0];
if(typeof data8 === "string"){
if(func2(data8) > 2000){
const err19 = {instancePath:instancePath+"/cautions/" + i0,schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data8};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
if(func2(data8) < 1){
const err20 = {instancePath:instancePath+"/cautions/" + i0,schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data8};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
else {
const err21 = {instancePath:instancePath+"/cautions/" + i0,schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data8};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
}
else {
const err22 = {instancePath:instancePath+"/cautions",schemaPath:"#/properties/cautions/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema88.properties.cautions.type,parentSchema:schema88.properties.cautions,data:data7};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
if(data.from !== undefined){
let data9 = data.from;
if(typeof data9 === "string"){
if(!pattern18.test(data9)){
const err23 = {instancePath:instancePath+"/from",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data9};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
else {
const err24 = {instancePath:instancePath+"/from",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data9};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
if(data.until !== undefined){
let data10 = data.until;
if(typeof data10 === "string"){
if(!pattern18.test(data10)){
const err25 = {instancePath:instancePath+"/until",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data10};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
}
else {
const err26 = {instancePath:instancePath+"/until",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data10};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
if(data.source !== undefined){
if(!(validate48(data.source, {instancePath:instancePath+"/source",parentData:data,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate48.errors : vErrors.concat(validate48.errors);
errors = vErrors.length;
}
}
if(data.examples !== undefined){
let data12 = data.examples;
if(Array.isArray(data12)){
if(data12.length < 1){
const err27 = {instancePath:instancePath+"/examples",schemaPath:"#/properties/examples/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema88.properties.examples,data:data12};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
const len1 = data12.length;
for(let i1=0; i1<len1; i1++){
if(!(validate50(data12[i1], {instancePath:instancePath+"/examples/" + i1,parentData:data12,parentDataProperty:i1,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate50.errors : vErrors.concat(validate50.errors);
errors = vErrors.length;
}
}
}
else {
const err28 = {instancePath:instancePath+"/examples",schemaPath:"#/properties/examples/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema88.properties.examples.type,parentSchema:schema88.properties.examples,data:data12};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
}
}
else {
const err29 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema88.type,parentSchema:schema88,data};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
validate45.errors = vErrors;
return errors === 0;
}
validate45.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate37(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="decision.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate37.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema74.required,parentSchema:schema74,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.id === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema74.required,parentSchema:schema74,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data.title === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema74.required,parentSchema:schema74,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
if(data.stage === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "stage"},message:"must have required property '"+"stage"+"'",schema:schema74.required,parentSchema:schema74,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(data.question === undefined){
const err4 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "question"},message:"must have required property '"+"question"+"'",schema:schema74.required,parentSchema:schema74,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(data.rules === undefined){
const err5 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "rules"},message:"must have required property '"+"rules"+"'",schema:schema74.required,parentSchema:schema74,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
for(const key0 in data){
if(!(func1.call(schema74.properties, key0))){
const err6 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema74,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("decision" !== data0){
const err7 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "decision"},message:"must be equal to constant",schema:"decision",parentSchema:schema74.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
if(data.id !== undefined){
let data1 = data.id;
if(typeof data1 === "string"){
if(func2(data1) > 80){
const err8 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(!pattern4.test(data1)){
const err9 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
else {
const err10 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
if(data.title !== undefined){
let data2 = data.title;
if(typeof data2 === "string"){
if(func2(data2) > 120){
const err11 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
if(func2(data2) < 1){
const err12 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
else {
const err13 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
if(data.stage !== undefined){
let data3 = data.stage;
if(typeof data3 === "string"){
if(func2(data3) > 80){
const err14 = {instancePath:instancePath+"/stage",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data3};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
if(!pattern4.test(data3)){
const err15 = {instancePath:instancePath+"/stage",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data3};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
}
else {
const err16 = {instancePath:instancePath+"/stage",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data3};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
if(data.order !== undefined){
let data4 = data.order;
if(!(((typeof data4 == "number") && (!(data4 % 1) && !isNaN(data4))) && (isFinite(data4)))){
const err17 = {instancePath:instancePath+"/order",schemaPath:"#/properties/order/type",keyword:"type",params:{type: "integer"},message:"must be integer",schema:schema74.properties.order.type,parentSchema:schema74.properties.order,data:data4};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
if((typeof data4 == "number") && (isFinite(data4))){
if(data4 > 99 || isNaN(data4)){
const err18 = {instancePath:instancePath+"/order",schemaPath:"#/properties/order/maximum",keyword:"maximum",params:{comparison: "<=", limit: 99},message:"must be <= 99",schema:99,parentSchema:schema74.properties.order,data:data4};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
if(data4 < 1 || isNaN(data4)){
const err19 = {instancePath:instancePath+"/order",schemaPath:"#/properties/order/minimum",keyword:"minimum",params:{comparison: ">=", limit: 1},message:"must be >= 1",schema:1,parentSchema:schema74.properties.order,data:data4};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
}
if(data.question !== undefined){
let data5 = data.question;
if(typeof data5 === "string"){
if(func2(data5) < 1){
const err20 = {instancePath:instancePath+"/question",schemaPath:"#/properties/question/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema74.properties.question,data:data5};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
else {
const err21 = {instancePath:instancePath+"/question",schemaPath:"#/properties/question/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema74.properties.question.type,parentSchema:schema74.properties.question,data:data5};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
if(data.about !== undefined){
let data6 = data.about;
if(typeof data6 === "string"){
if(func2(data6) > 2000){
const err22 = {instancePath:instancePath+"/about",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
if(func2(data6) < 1){
const err23 = {instancePath:instancePath+"/about",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
else {
const err24 = {instancePath:instancePath+"/about",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
if(data["only-when"] !== undefined){
if(!(validate38(data["only-when"], {instancePath:instancePath+"/only-when",parentData:data,parentDataProperty:"only-when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate38.errors : vErrors.concat(validate38.errors);
errors = vErrors.length;
}
}
if(data.register !== undefined){
let data8 = data.register;
if(typeof data8 === "string"){
if(func2(data8) > 120){
const err25 = {instancePath:instancePath+"/register",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data8};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
if(func2(data8) < 1){
const err26 = {instancePath:instancePath+"/register",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data8};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
else {
const err27 = {instancePath:instancePath+"/register",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data8};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
}
if(data.outcomes !== undefined){
let data9 = data.outcomes;
if(Array.isArray(data9)){
if(data9.length < 2){
const err28 = {instancePath:instancePath+"/outcomes",schemaPath:"#/properties/outcomes/minItems",keyword:"minItems",params:{limit: 2},message:"must NOT have fewer than 2 items",schema:2,parentSchema:schema74.properties.outcomes,data:data9};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
const len0 = data9.length;
for(let i0=0; i0<len0; i0++){
let data10 = data9[i0];
if(typeof data10 === "string"){
if(func2(data10) > 80){
const err29 = {instancePath:instancePath+"/outcomes/" + i0,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data10};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
if(!pattern4.test(data10)){
const err30 = {instancePath:instancePath+"/outcomes/" + i0,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data10};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
}
else {
const err31 = {instancePath:instancePath+"/outcomes/" + i0,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data10};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
}
let i1 = data9.length;
let j0;
if(i1 > 1){
outer0:
for(;i1--;){
for(j0 = i1; j0--;){
if(func0(data9[i1], data9[j0])){
const err32 = {instancePath:instancePath+"/outcomes",schemaPath:"#/properties/outcomes/uniqueItems",keyword:"uniqueItems",params:{i: i1, j: j0},message:"must NOT have duplicate items (items ## "+j0+" and "+i1+" are identical)",schema:true,parentSchema:schema74.properties.outcomes,data:data9};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
break outer0;
}
}
}
}
}
else {
const err33 = {instancePath:instancePath+"/outcomes",schemaPath:"#/properties/outcomes/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema74.properties.outcomes.type,parentSchema:schema74.properties.outcomes,data:data9};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
}
if(data.say !== undefined){
let data11 = data.say;
if(data11 && typeof data11 == "object" && !Array.isArray(data11)){
for(const key1 in data11){
const _errs30 = errors;
if(typeof key1 === "string"){
if(func2(key1) > 80){
const err34 = {instancePath:instancePath+"/say",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
if(!pattern4.test(key1)){
const err35 = {instancePath:instancePath+"/say",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
}
else {
const err36 = {instancePath:instancePath+"/say",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
}
var valid10 = _errs30 === errors;
if(!valid10){
const err37 = {instancePath:instancePath+"/say",schemaPath:"#/properties/say/propertyNames",keyword:"propertyNames",params:{propertyName: key1},message:"property name must be valid",schema:schema74.properties.say.propertyNames,parentSchema:schema74.properties.say,data:data11};
if(vErrors === null){
vErrors = [err37];
}
else {
vErrors.push(err37);
}
errors++;
}
}
for(const key2 in data11){
let data12 = data11[key2];
if(typeof data12 === "string"){
if(func2(data12) > 2000){
const err38 = {instancePath:instancePath+"/say/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data12};
if(vErrors === null){
vErrors = [err38];
}
else {
vErrors.push(err38);
}
errors++;
}
if(func2(data12) < 1){
const err39 = {instancePath:instancePath+"/say/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data12};
if(vErrors === null){
vErrors = [err39];
}
else {
vErrors.push(err39);
}
errors++;
}
}
else {
const err40 = {instancePath:instancePath+"/say/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data12};
if(vErrors === null){
vErrors = [err40];
}
else {
vErrors.push(err40);
}
errors++;
}
}
}
else {
const err41 = {instancePath:instancePath+"/say",schemaPath:"#/properties/say/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema74.properties.say.type,parentSchema:schema74.properties.say,data:data11};
if(vErrors === null){
vErrors = [err41];
}
else {
vErrors.push(err41);
}
errors++;
}
}
if(data.otherwise !== undefined){
let data13 = data.otherwise;
if(typeof data13 === "string"){
if(func2(data13) > 80){
const err42 = {instancePath:instancePath+"/otherwise",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data13};
if(vErrors === null){
vErrors = [err42];
}
else {
vErrors.push(err42);
}
errors++;
}
if(!pattern4.test(data13)){
const err43 = {instancePath:instancePath+"/otherwise",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data13};
if(vErrors === null){
vErrors = [err43];
}
else {
vErrors.push(err43);
}
errors++;
}
}
else {
const err44 = {instancePath:instancePath+"/otherwise",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data13};
if(vErrors === null){
vErrors = [err44];
}
else {
vErrors.push(err44);
}
errors++;
}
}
if(data.choose !== undefined){
let data14 = data.choose;
if("program" !== data14){
const err45 = {instancePath:instancePath+"/choose",schemaPath:"#/properties/choose/const",keyword:"const",params:{allowedValue: "program"},message:"must be equal to constant",schema:"program",parentSchema:schema74.properties.choose,data:data14};
if(vErrors === null){
vErrors = [err45];
}
else {
vErrors.push(err45);
}
errors++;
}
}
if(data.from !== undefined){
let data15 = data.from;
if(Array.isArray(data15)){
if(data15.length < 1){
const err46 = {instancePath:instancePath+"/from",schemaPath:"#/properties/from/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema74.properties.from,data:data15};
if(vErrors === null){
vErrors = [err46];
}
else {
vErrors.push(err46);
}
errors++;
}
const len1 = data15.length;
for(let i2=0; i2<len1; i2++){
let data16 = data15[i2];
if(typeof data16 === "string"){
if(func2(data16) > 80){
const err47 = {instancePath:instancePath+"/from/" + i2,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data16};
if(vErrors === null){
vErrors = [err47];
}
else {
vErrors.push(err47);
}
errors++;
}
if(!pattern4.test(data16)){
const err48 = {instancePath:instancePath+"/from/" + i2,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data16};
if(vErrors === null){
vErrors = [err48];
}
else {
vErrors.push(err48);
}
errors++;
}
}
else {
const err49 = {instancePath:instancePath+"/from/" + i2,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data16};
if(vErrors === null){
vErrors = [err49];
}
else {
vErrors.push(err49);
}
errors++;
}
}
let i3 = data15.length;
let j1;
if(i3 > 1){
outer1:
for(;i3--;){
for(j1 = i3; j1--;){
if(func0(data15[i3], data15[j1])){
const err50 = {instancePath:instancePath+"/from",schemaPath:"#/properties/from/uniqueItems",keyword:"uniqueItems",params:{i: i3, j: j1},message:"must NOT have duplicate items (items ## "+j1+" and "+i3+" are identical)",schema:true,parentSchema:schema74.properties.from,data:data15};
if(vErrors === null){
vErrors = [err50];
}
else {
vErrors.push(err50);
}
errors++;
break outer1;
}
}
}
}
}
else {
const err51 = {instancePath:instancePath+"/from",schemaPath:"#/properties/from/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema74.properties.from.type,parentSchema:schema74.properties.from,data:data15};
if(vErrors === null){
vErrors = [err51];
}
else {
vErrors.push(err51);
}
errors++;
}
}
if(data.prefer !== undefined){
let data17 = data.prefer;
if(Array.isArray(data17)){
if(data17.length < 1){
const err52 = {instancePath:instancePath+"/prefer",schemaPath:"#/properties/prefer/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema74.properties.prefer,data:data17};
if(vErrors === null){
vErrors = [err52];
}
else {
vErrors.push(err52);
}
errors++;
}
const len2 = data17.length;
for(let i4=0; i4<len2; i4++){
let data18 = data17[i4];
if(data18 && typeof data18 == "object" && !Array.isArray(data18)){
if(data18.fact === undefined){
const err53 = {instancePath:instancePath+"/prefer/" + i4,schemaPath:"#/properties/prefer/items/required",keyword:"required",params:{missingProperty: "fact"},message:"must have required property '"+"fact"+"'",schema:schema74.properties.prefer.items.required,parentSchema:schema74.properties.prefer.items,data:data18};
if(vErrors === null){
vErrors = [err53];
}
else {
vErrors.push(err53);
}
errors++;
}
if(data18.first === undefined){
const err54 = {instancePath:instancePath+"/prefer/" + i4,schemaPath:"#/properties/prefer/items/required",keyword:"required",params:{missingProperty: "first"},message:"must have required property '"+"first"+"'",schema:schema74.properties.prefer.items.required,parentSchema:schema74.properties.prefer.items,data:data18};
if(vErrors === null){
vErrors = [err54];
}
else {
vErrors.push(err54);
}
errors++;
}
for(const key3 in data18){
if(!((key3 === "fact") || (key3 === "first"))){
const err55 = {instancePath:instancePath+"/prefer/" + i4,schemaPath:"#/properties/prefer/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key3},message:"must NOT have additional properties",schema:false,parentSchema:schema74.properties.prefer.items,data:data18};
if(vErrors === null){
vErrors = [err55];
}
else {
vErrors.push(err55);
}
errors++;
}
}
if(data18.fact !== undefined){
let data19 = data18.fact;
if(typeof data19 === "string"){
if(func2(data19) > 80){
const err56 = {instancePath:instancePath+"/prefer/" + i4+"/fact",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data19};
if(vErrors === null){
vErrors = [err56];
}
else {
vErrors.push(err56);
}
errors++;
}
if(!pattern4.test(data19)){
const err57 = {instancePath:instancePath+"/prefer/" + i4+"/fact",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data19};
if(vErrors === null){
vErrors = [err57];
}
else {
vErrors.push(err57);
}
errors++;
}
}
else {
const err58 = {instancePath:instancePath+"/prefer/" + i4+"/fact",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data19};
if(vErrors === null){
vErrors = [err58];
}
else {
vErrors.push(err58);
}
errors++;
}
}
if(data18.first !== undefined){
let data20 = data18.first;
if(!((data20 === "lowest") || (data20 === "highest"))){
const err59 = {instancePath:instancePath+"/prefer/" + i4+"/first",schemaPath:"#/properties/prefer/items/properties/first/enum",keyword:"enum",params:{allowedValues: schema74.properties.prefer.items.properties.first.enum},message:"must be equal to one of the allowed values",schema:schema74.properties.prefer.items.properties.first.enum,parentSchema:schema74.properties.prefer.items.properties.first,data:data20};
if(vErrors === null){
vErrors = [err59];
}
else {
vErrors.push(err59);
}
errors++;
}
}
}
else {
const err60 = {instancePath:instancePath+"/prefer/" + i4,schemaPath:"#/properties/prefer/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema74.properties.prefer.items.type,parentSchema:schema74.properties.prefer.items,data:data18};
if(vErrors === null){
vErrors = [err60];
}
else {
vErrors.push(err60);
}
errors++;
}
}
}
else {
const err61 = {instancePath:instancePath+"/prefer",schemaPath:"#/properties/prefer/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema74.properties.prefer.type,parentSchema:schema74.properties.prefer,data:data17};
if(vErrors === null){
vErrors = [err61];
}
else {
vErrors.push(err61);
}
errors++;
}
}
if(data.gaps !== undefined){
let data21 = data.gaps;
if(Array.isArray(data21)){
if(data21.length < 1){
const err62 = {instancePath:instancePath+"/gaps",schemaPath:"#/properties/gaps/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema74.properties.gaps,data:data21};
if(vErrors === null){
vErrors = [err62];
}
else {
vErrors.push(err62);
}
errors++;
}
const len3 = data21.length;
for(let i5=0; i5<len3; i5++){
let data22 = data21[i5];
if(data22 && typeof data22 == "object" && !Array.isArray(data22)){
if(data22.because === undefined){
const err63 = {instancePath:instancePath+"/gaps/" + i5,schemaPath:"#/properties/gaps/items/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema74.properties.gaps.items.required,parentSchema:schema74.properties.gaps.items,data:data22};
if(vErrors === null){
vErrors = [err63];
}
else {
vErrors.push(err63);
}
errors++;
}
for(const key4 in data22){
if(!((key4 === "when") || (key4 === "because"))){
const err64 = {instancePath:instancePath+"/gaps/" + i5,schemaPath:"#/properties/gaps/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key4},message:"must NOT have additional properties",schema:false,parentSchema:schema74.properties.gaps.items,data:data22};
if(vErrors === null){
vErrors = [err64];
}
else {
vErrors.push(err64);
}
errors++;
}
}
if(data22.when !== undefined){
if(!(validate38(data22.when, {instancePath:instancePath+"/gaps/" + i5+"/when",parentData:data22,parentDataProperty:"when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate38.errors : vErrors.concat(validate38.errors);
errors = vErrors.length;
}
}
if(data22.because !== undefined){
let data24 = data22.because;
if(typeof data24 === "string"){
if(func2(data24) > 2000){
const err65 = {instancePath:instancePath+"/gaps/" + i5+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data24};
if(vErrors === null){
vErrors = [err65];
}
else {
vErrors.push(err65);
}
errors++;
}
if(func2(data24) < 1){
const err66 = {instancePath:instancePath+"/gaps/" + i5+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data24};
if(vErrors === null){
vErrors = [err66];
}
else {
vErrors.push(err66);
}
errors++;
}
}
else {
const err67 = {instancePath:instancePath+"/gaps/" + i5+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data24};
if(vErrors === null){
vErrors = [err67];
}
else {
vErrors.push(err67);
}
errors++;
}
}
}
else {
const err68 = {instancePath:instancePath+"/gaps/" + i5,schemaPath:"#/properties/gaps/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema74.properties.gaps.items.type,parentSchema:schema74.properties.gaps.items,data:data22};
if(vErrors === null){
vErrors = [err68];
}
else {
vErrors.push(err68);
}
errors++;
}
}
}
else {
const err69 = {instancePath:instancePath+"/gaps",schemaPath:"#/properties/gaps/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema74.properties.gaps.type,parentSchema:schema74.properties.gaps,data:data21};
if(vErrors === null){
vErrors = [err69];
}
else {
vErrors.push(err69);
}
errors++;
}
}
if(data.rules !== undefined){
let data25 = data.rules;
if(Array.isArray(data25)){
if(data25.length < 1){
const err70 = {instancePath:instancePath+"/rules",schemaPath:"#/properties/rules/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema74.properties.rules,data:data25};
if(vErrors === null){
vErrors = [err70];
}
else {
vErrors.push(err70);
}
errors++;
}
const len4 = data25.length;
for(let i6=0; i6<len4; i6++){
if(!(validate45(data25[i6], {instancePath:instancePath+"/rules/" + i6,parentData:data25,parentDataProperty:i6,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate45.errors : vErrors.concat(validate45.errors);
errors = vErrors.length;
}
}
}
else {
const err71 = {instancePath:instancePath+"/rules",schemaPath:"#/properties/rules/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema74.properties.rules.type,parentSchema:schema74.properties.rules,data:data25};
if(vErrors === null){
vErrors = [err71];
}
else {
vErrors.push(err71);
}
errors++;
}
}
}
else {
const err72 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema74.type,parentSchema:schema74,data};
if(vErrors === null){
vErrors = [err72];
}
else {
vErrors.push(err72);
}
errors++;
}
validate37.errors = vErrors;
return errors === 0;
}
validate37.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_equipment = validate55;
const schema104 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"equipment.json","title":"Equipment","description":"One machine as its maker states it.","type":"object","additionalProperties":false,"required":["kind","id","machine","name","maker","model","serial","room","installed","instructions"],"properties":{"kind":{"const":"equipment","description":"The kind of document; it picks this schema."},"id":{"$ref":"defs.json#/$defs/id"},"machine":{"$ref":"defs.json#/$defs/id","description":"Machine kind."},"name":{"$ref":"defs.json#/$defs/label","description":"What the clinic calls it."},"maker":{"type":"string","minLength":1,"description":"Maker."},"model":{"type":"string","minLength":1,"description":"Model."},"serial":{"type":"string","minLength":1,"description":"Serial number."},"room":{"$ref":"defs.json#/$defs/id","description":"Room it stands in."},"installed":{"$ref":"defs.json#/$defs/date"},"in-service":{"type":"boolean","description":"false takes its programs out of every choice."},"instructions":{"type":"object","additionalProperties":false,"required":["title","edition","kept"],"properties":{"title":{"type":"string","minLength":1,"description":"Title of the maker's instructions."},"edition":{"type":"string","minLength":1,"description":"Edition or revision."},"kept":{"type":"string","minLength":1,"description":"Where the copy is."}}},"facts":{"$ref":"defs.json#/$defs/situation","description":"Facts of the machine."},"intervals":{"type":"object","propertyNames":{"$ref":"defs.json#/$defs/id"},"additionalProperties":{"type":"object","additionalProperties":false,"required":["every","at"],"properties":{"every":{"$ref":"defs.json#/$defs/interval"},"at":{"type":"string","minLength":1,"description":"Where in the maker's instructions."}}},"description":"Task intervals that the maker states; the stricter of these and the rules holds."},"programs":{"type":"array","items":{"type":"object","additionalProperties":false,"required":["id","name","use","facts","stages"],"properties":{"id":{"$ref":"defs.json#/$defs/id"},"name":{"$ref":"defs.json#/$defs/label","description":"Name on the panel."},"use":{"$ref":"defs.json#/$defs/text","description":"What the maker says it is for."},"facts":{"$ref":"defs.json#/$defs/situation","description":"What the program offers."},"stages":{"type":"array","items":{"type":"object","additionalProperties":false,"required":["name"],"properties":{"name":{"$ref":"defs.json#/$defs/label"},"temperature":{"$ref":"defs.json#/$defs/quantity"},"time":{"$ref":"defs.json#/$defs/quantity"},"pressure":{"type":"object","additionalProperties":false,"minProperties":1,"properties":{"absolute":{"$ref":"defs.json#/$defs/quantity","description":"Counted from a vacuum."},"gauge":{"$ref":"defs.json#/$defs/quantity","description":"Counted from the pressure of the air."},"altitude":{"$ref":"defs.json#/$defs/quantity","description":"Where the gauge reads so; sea level where it is not stated."}},"description":"Pressure of the chamber, absolute or gauge. That of a stage of 100 °C or more is compared with steam tables."},"note":{"$ref":"defs.json#/$defs/label"}}},"minItems":1},"note":{"$ref":"defs.json#/$defs/text","description":"What else the maker says."}}},"minItems":1},"opening":{"type":"array","items":{"$ref":"defs.json#/$defs/text"},"minItems":1,"description":"How its maker says it is opened by hand after a power failure, step by step."},"note":{"$ref":"defs.json#/$defs/text","description":"What else staff must know."}}};
const schema113 = {"type":"string","minLength":1,"maxLength":60,"description":"How often at the latest: `1 d`, `25 cycles`, `1 mo or 25 cycles` (whichever comes first), `1 cycle` (every cycle)."};
const schema118 = {"type":"string","pattern":"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$","maxLength":40,"description":"A number and a unit: `10 min`, `134 °C`, `25 cycles`, `A0 600`, `F0 15 min`."};
const pattern51 = new RegExp("^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$", "u");

function validate56(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate56.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
for(const key0 in data){
const _errs1 = errors;
if(typeof key0 === "string"){
if(func2(key0) > 80){
const err0 = {instancePath,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(!pattern4.test(key0)){
const err1 = {instancePath,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
else {
const err2 = {instancePath,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
var valid0 = _errs1 === errors;
if(!valid0){
const err3 = {instancePath,schemaPath:"#/propertyNames",keyword:"propertyNames",params:{propertyName: key0},message:"property name must be valid",schema:schema45.propertyNames,parentSchema:schema45,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
for(const key1 in data){
let data0 = data[key1];
if((((typeof data0 !== "string") && (!((typeof data0 == "number") && (isFinite(data0))))) && (typeof data0 !== "boolean")) && (!(Array.isArray(data0)))){
const err4 = {instancePath:instancePath+"/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/additionalProperties/type",keyword:"type",params:{type: schema45.additionalProperties.type},message:"must be string,number,boolean,array",schema:schema45.additionalProperties.type,parentSchema:schema45.additionalProperties,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(Array.isArray(data0)){
const len0 = data0.length;
for(let i0=0; i0<len0; i0++){
let data1 = data0[i0];
if(typeof data1 !== "string"){
const err5 = {instancePath:instancePath+"/" + key1.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + i0,schemaPath:"#/additionalProperties/items/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema45.additionalProperties.items.type,parentSchema:schema45.additionalProperties.items,data:data1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
}
}
}
else {
const err6 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema45.type,parentSchema:schema45,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
validate56.errors = vErrors;
return errors === 0;
}
validate56.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate55(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="equipment.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate55.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema104.required,parentSchema:schema104,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.id === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema104.required,parentSchema:schema104,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data.machine === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "machine"},message:"must have required property '"+"machine"+"'",schema:schema104.required,parentSchema:schema104,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
if(data.name === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "name"},message:"must have required property '"+"name"+"'",schema:schema104.required,parentSchema:schema104,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(data.maker === undefined){
const err4 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "maker"},message:"must have required property '"+"maker"+"'",schema:schema104.required,parentSchema:schema104,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(data.model === undefined){
const err5 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "model"},message:"must have required property '"+"model"+"'",schema:schema104.required,parentSchema:schema104,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(data.serial === undefined){
const err6 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "serial"},message:"must have required property '"+"serial"+"'",schema:schema104.required,parentSchema:schema104,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
if(data.room === undefined){
const err7 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "room"},message:"must have required property '"+"room"+"'",schema:schema104.required,parentSchema:schema104,data};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
if(data.installed === undefined){
const err8 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "installed"},message:"must have required property '"+"installed"+"'",schema:schema104.required,parentSchema:schema104,data};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(data.instructions === undefined){
const err9 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "instructions"},message:"must have required property '"+"instructions"+"'",schema:schema104.required,parentSchema:schema104,data};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
for(const key0 in data){
if(!(func1.call(schema104.properties, key0))){
const err10 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema104,data};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("equipment" !== data0){
const err11 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "equipment"},message:"must be equal to constant",schema:"equipment",parentSchema:schema104.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.id !== undefined){
let data1 = data.id;
if(typeof data1 === "string"){
if(func2(data1) > 80){
const err12 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(!pattern4.test(data1)){
const err13 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
if(data.machine !== undefined){
let data2 = data.machine;
if(typeof data2 === "string"){
if(func2(data2) > 80){
const err15 = {instancePath:instancePath+"/machine",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data2};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(!pattern4.test(data2)){
const err16 = {instancePath:instancePath+"/machine",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data2};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
else {
const err17 = {instancePath:instancePath+"/machine",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data2};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
if(data.name !== undefined){
let data3 = data.name;
if(typeof data3 === "string"){
if(func2(data3) > 120){
const err18 = {instancePath:instancePath+"/name",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
if(func2(data3) < 1){
const err19 = {instancePath:instancePath+"/name",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
else {
const err20 = {instancePath:instancePath+"/name",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
if(data.maker !== undefined){
let data4 = data.maker;
if(typeof data4 === "string"){
if(func2(data4) < 1){
const err21 = {instancePath:instancePath+"/maker",schemaPath:"#/properties/maker/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema104.properties.maker,data:data4};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
else {
const err22 = {instancePath:instancePath+"/maker",schemaPath:"#/properties/maker/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema104.properties.maker.type,parentSchema:schema104.properties.maker,data:data4};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
if(data.model !== undefined){
let data5 = data.model;
if(typeof data5 === "string"){
if(func2(data5) < 1){
const err23 = {instancePath:instancePath+"/model",schemaPath:"#/properties/model/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema104.properties.model,data:data5};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
else {
const err24 = {instancePath:instancePath+"/model",schemaPath:"#/properties/model/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema104.properties.model.type,parentSchema:schema104.properties.model,data:data5};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
if(data.serial !== undefined){
let data6 = data.serial;
if(typeof data6 === "string"){
if(func2(data6) < 1){
const err25 = {instancePath:instancePath+"/serial",schemaPath:"#/properties/serial/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema104.properties.serial,data:data6};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
}
else {
const err26 = {instancePath:instancePath+"/serial",schemaPath:"#/properties/serial/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema104.properties.serial.type,parentSchema:schema104.properties.serial,data:data6};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
if(data.room !== undefined){
let data7 = data.room;
if(typeof data7 === "string"){
if(func2(data7) > 80){
const err27 = {instancePath:instancePath+"/room",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data7};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
if(!pattern4.test(data7)){
const err28 = {instancePath:instancePath+"/room",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data7};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
}
else {
const err29 = {instancePath:instancePath+"/room",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data7};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
}
if(data.installed !== undefined){
let data8 = data.installed;
if(typeof data8 === "string"){
if(!pattern18.test(data8)){
const err30 = {instancePath:instancePath+"/installed",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data8};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
}
else {
const err31 = {instancePath:instancePath+"/installed",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data8};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
}
if(data["in-service"] !== undefined){
let data9 = data["in-service"];
if(typeof data9 !== "boolean"){
const err32 = {instancePath:instancePath+"/in-service",schemaPath:"#/properties/in-service/type",keyword:"type",params:{type: "boolean"},message:"must be boolean",schema:schema104.properties["in-service"].type,parentSchema:schema104.properties["in-service"],data:data9};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
}
if(data.instructions !== undefined){
let data10 = data.instructions;
if(data10 && typeof data10 == "object" && !Array.isArray(data10)){
if(data10.title === undefined){
const err33 = {instancePath:instancePath+"/instructions",schemaPath:"#/properties/instructions/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema104.properties.instructions.required,parentSchema:schema104.properties.instructions,data:data10};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
if(data10.edition === undefined){
const err34 = {instancePath:instancePath+"/instructions",schemaPath:"#/properties/instructions/required",keyword:"required",params:{missingProperty: "edition"},message:"must have required property '"+"edition"+"'",schema:schema104.properties.instructions.required,parentSchema:schema104.properties.instructions,data:data10};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
if(data10.kept === undefined){
const err35 = {instancePath:instancePath+"/instructions",schemaPath:"#/properties/instructions/required",keyword:"required",params:{missingProperty: "kept"},message:"must have required property '"+"kept"+"'",schema:schema104.properties.instructions.required,parentSchema:schema104.properties.instructions,data:data10};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
for(const key1 in data10){
if(!(((key1 === "title") || (key1 === "edition")) || (key1 === "kept"))){
const err36 = {instancePath:instancePath+"/instructions",schemaPath:"#/properties/instructions/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key1},message:"must NOT have additional properties",schema:false,parentSchema:schema104.properties.instructions,data:data10};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
}
}
if(data10.title !== undefined){
let data11 = data10.title;
if(typeof data11 === "string"){
if(func2(data11) < 1){
const err37 = {instancePath:instancePath+"/instructions/title",schemaPath:"#/properties/instructions/properties/title/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema104.properties.instructions.properties.title,data:data11};
if(vErrors === null){
vErrors = [err37];
}
else {
vErrors.push(err37);
}
errors++;
}
}
else {
const err38 = {instancePath:instancePath+"/instructions/title",schemaPath:"#/properties/instructions/properties/title/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema104.properties.instructions.properties.title.type,parentSchema:schema104.properties.instructions.properties.title,data:data11};
if(vErrors === null){
vErrors = [err38];
}
else {
vErrors.push(err38);
}
errors++;
}
}
if(data10.edition !== undefined){
let data12 = data10.edition;
if(typeof data12 === "string"){
if(func2(data12) < 1){
const err39 = {instancePath:instancePath+"/instructions/edition",schemaPath:"#/properties/instructions/properties/edition/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema104.properties.instructions.properties.edition,data:data12};
if(vErrors === null){
vErrors = [err39];
}
else {
vErrors.push(err39);
}
errors++;
}
}
else {
const err40 = {instancePath:instancePath+"/instructions/edition",schemaPath:"#/properties/instructions/properties/edition/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema104.properties.instructions.properties.edition.type,parentSchema:schema104.properties.instructions.properties.edition,data:data12};
if(vErrors === null){
vErrors = [err40];
}
else {
vErrors.push(err40);
}
errors++;
}
}
if(data10.kept !== undefined){
let data13 = data10.kept;
if(typeof data13 === "string"){
if(func2(data13) < 1){
const err41 = {instancePath:instancePath+"/instructions/kept",schemaPath:"#/properties/instructions/properties/kept/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema104.properties.instructions.properties.kept,data:data13};
if(vErrors === null){
vErrors = [err41];
}
else {
vErrors.push(err41);
}
errors++;
}
}
else {
const err42 = {instancePath:instancePath+"/instructions/kept",schemaPath:"#/properties/instructions/properties/kept/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema104.properties.instructions.properties.kept.type,parentSchema:schema104.properties.instructions.properties.kept,data:data13};
if(vErrors === null){
vErrors = [err42];
}
else {
vErrors.push(err42);
}
errors++;
}
}
}
else {
const err43 = {instancePath:instancePath+"/instructions",schemaPath:"#/properties/instructions/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema104.properties.instructions.type,parentSchema:schema104.properties.instructions,data:data10};
if(vErrors === null){
vErrors = [err43];
}
else {
vErrors.push(err43);
}
errors++;
}
}
if(data.facts !== undefined){
if(!(validate56(data.facts, {instancePath:instancePath+"/facts",parentData:data,parentDataProperty:"facts",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate56.errors : vErrors.concat(validate56.errors);
errors = vErrors.length;
}
}
if(data.intervals !== undefined){
let data15 = data.intervals;
if(data15 && typeof data15 == "object" && !Array.isArray(data15)){
for(const key2 in data15){
const _errs38 = errors;
if(typeof key2 === "string"){
if(func2(key2) > 80){
const err44 = {instancePath:instancePath+"/intervals",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key2,propertyName:key2};
if(vErrors === null){
vErrors = [err44];
}
else {
vErrors.push(err44);
}
errors++;
}
if(!pattern4.test(key2)){
const err45 = {instancePath:instancePath+"/intervals",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key2,propertyName:key2};
if(vErrors === null){
vErrors = [err45];
}
else {
vErrors.push(err45);
}
errors++;
}
}
else {
const err46 = {instancePath:instancePath+"/intervals",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key2,propertyName:key2};
if(vErrors === null){
vErrors = [err46];
}
else {
vErrors.push(err46);
}
errors++;
}
var valid7 = _errs38 === errors;
if(!valid7){
const err47 = {instancePath:instancePath+"/intervals",schemaPath:"#/properties/intervals/propertyNames",keyword:"propertyNames",params:{propertyName: key2},message:"property name must be valid",schema:schema104.properties.intervals.propertyNames,parentSchema:schema104.properties.intervals,data:data15};
if(vErrors === null){
vErrors = [err47];
}
else {
vErrors.push(err47);
}
errors++;
}
}
for(const key3 in data15){
let data16 = data15[key3];
if(data16 && typeof data16 == "object" && !Array.isArray(data16)){
if(data16.every === undefined){
const err48 = {instancePath:instancePath+"/intervals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/intervals/additionalProperties/required",keyword:"required",params:{missingProperty: "every"},message:"must have required property '"+"every"+"'",schema:schema104.properties.intervals.additionalProperties.required,parentSchema:schema104.properties.intervals.additionalProperties,data:data16};
if(vErrors === null){
vErrors = [err48];
}
else {
vErrors.push(err48);
}
errors++;
}
if(data16.at === undefined){
const err49 = {instancePath:instancePath+"/intervals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/intervals/additionalProperties/required",keyword:"required",params:{missingProperty: "at"},message:"must have required property '"+"at"+"'",schema:schema104.properties.intervals.additionalProperties.required,parentSchema:schema104.properties.intervals.additionalProperties,data:data16};
if(vErrors === null){
vErrors = [err49];
}
else {
vErrors.push(err49);
}
errors++;
}
for(const key4 in data16){
if(!((key4 === "every") || (key4 === "at"))){
const err50 = {instancePath:instancePath+"/intervals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/intervals/additionalProperties/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key4},message:"must NOT have additional properties",schema:false,parentSchema:schema104.properties.intervals.additionalProperties,data:data16};
if(vErrors === null){
vErrors = [err50];
}
else {
vErrors.push(err50);
}
errors++;
}
}
if(data16.every !== undefined){
let data17 = data16.every;
if(typeof data17 === "string"){
if(func2(data17) > 60){
const err51 = {instancePath:instancePath+"/intervals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1")+"/every",schemaPath:"defs.json#/$defs/interval/maxLength",keyword:"maxLength",params:{limit: 60},message:"must NOT have more than 60 characters",schema:60,parentSchema:schema113,data:data17};
if(vErrors === null){
vErrors = [err51];
}
else {
vErrors.push(err51);
}
errors++;
}
if(func2(data17) < 1){
const err52 = {instancePath:instancePath+"/intervals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1")+"/every",schemaPath:"defs.json#/$defs/interval/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema113,data:data17};
if(vErrors === null){
vErrors = [err52];
}
else {
vErrors.push(err52);
}
errors++;
}
}
else {
const err53 = {instancePath:instancePath+"/intervals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1")+"/every",schemaPath:"defs.json#/$defs/interval/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema113.type,parentSchema:schema113,data:data17};
if(vErrors === null){
vErrors = [err53];
}
else {
vErrors.push(err53);
}
errors++;
}
}
if(data16.at !== undefined){
let data18 = data16.at;
if(typeof data18 === "string"){
if(func2(data18) < 1){
const err54 = {instancePath:instancePath+"/intervals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1")+"/at",schemaPath:"#/properties/intervals/additionalProperties/properties/at/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema104.properties.intervals.additionalProperties.properties.at,data:data18};
if(vErrors === null){
vErrors = [err54];
}
else {
vErrors.push(err54);
}
errors++;
}
}
else {
const err55 = {instancePath:instancePath+"/intervals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1")+"/at",schemaPath:"#/properties/intervals/additionalProperties/properties/at/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema104.properties.intervals.additionalProperties.properties.at.type,parentSchema:schema104.properties.intervals.additionalProperties.properties.at,data:data18};
if(vErrors === null){
vErrors = [err55];
}
else {
vErrors.push(err55);
}
errors++;
}
}
}
else {
const err56 = {instancePath:instancePath+"/intervals/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/intervals/additionalProperties/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema104.properties.intervals.additionalProperties.type,parentSchema:schema104.properties.intervals.additionalProperties,data:data16};
if(vErrors === null){
vErrors = [err56];
}
else {
vErrors.push(err56);
}
errors++;
}
}
}
else {
const err57 = {instancePath:instancePath+"/intervals",schemaPath:"#/properties/intervals/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema104.properties.intervals.type,parentSchema:schema104.properties.intervals,data:data15};
if(vErrors === null){
vErrors = [err57];
}
else {
vErrors.push(err57);
}
errors++;
}
}
if(data.programs !== undefined){
let data19 = data.programs;
if(Array.isArray(data19)){
if(data19.length < 1){
const err58 = {instancePath:instancePath+"/programs",schemaPath:"#/properties/programs/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema104.properties.programs,data:data19};
if(vErrors === null){
vErrors = [err58];
}
else {
vErrors.push(err58);
}
errors++;
}
const len0 = data19.length;
for(let i0=0; i0<len0; i0++){
let data20 = data19[i0];
if(data20 && typeof data20 == "object" && !Array.isArray(data20)){
if(data20.id === undefined){
const err59 = {instancePath:instancePath+"/programs/" + i0,schemaPath:"#/properties/programs/items/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema104.properties.programs.items.required,parentSchema:schema104.properties.programs.items,data:data20};
if(vErrors === null){
vErrors = [err59];
}
else {
vErrors.push(err59);
}
errors++;
}
if(data20.name === undefined){
const err60 = {instancePath:instancePath+"/programs/" + i0,schemaPath:"#/properties/programs/items/required",keyword:"required",params:{missingProperty: "name"},message:"must have required property '"+"name"+"'",schema:schema104.properties.programs.items.required,parentSchema:schema104.properties.programs.items,data:data20};
if(vErrors === null){
vErrors = [err60];
}
else {
vErrors.push(err60);
}
errors++;
}
if(data20.use === undefined){
const err61 = {instancePath:instancePath+"/programs/" + i0,schemaPath:"#/properties/programs/items/required",keyword:"required",params:{missingProperty: "use"},message:"must have required property '"+"use"+"'",schema:schema104.properties.programs.items.required,parentSchema:schema104.properties.programs.items,data:data20};
if(vErrors === null){
vErrors = [err61];
}
else {
vErrors.push(err61);
}
errors++;
}
if(data20.facts === undefined){
const err62 = {instancePath:instancePath+"/programs/" + i0,schemaPath:"#/properties/programs/items/required",keyword:"required",params:{missingProperty: "facts"},message:"must have required property '"+"facts"+"'",schema:schema104.properties.programs.items.required,parentSchema:schema104.properties.programs.items,data:data20};
if(vErrors === null){
vErrors = [err62];
}
else {
vErrors.push(err62);
}
errors++;
}
if(data20.stages === undefined){
const err63 = {instancePath:instancePath+"/programs/" + i0,schemaPath:"#/properties/programs/items/required",keyword:"required",params:{missingProperty: "stages"},message:"must have required property '"+"stages"+"'",schema:schema104.properties.programs.items.required,parentSchema:schema104.properties.programs.items,data:data20};
if(vErrors === null){
vErrors = [err63];
}
else {
vErrors.push(err63);
}
errors++;
}
for(const key5 in data20){
if(!((((((key5 === "id") || (key5 === "name")) || (key5 === "use")) || (key5 === "facts")) || (key5 === "stages")) || (key5 === "note"))){
const err64 = {instancePath:instancePath+"/programs/" + i0,schemaPath:"#/properties/programs/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key5},message:"must NOT have additional properties",schema:false,parentSchema:schema104.properties.programs.items,data:data20};
if(vErrors === null){
vErrors = [err64];
}
else {
vErrors.push(err64);
}
errors++;
}
}
if(data20.id !== undefined){
let data21 = data20.id;
if(typeof data21 === "string"){
if(func2(data21) > 80){
const err65 = {instancePath:instancePath+"/programs/" + i0+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data21};
if(vErrors === null){
vErrors = [err65];
}
else {
vErrors.push(err65);
}
errors++;
}
if(!pattern4.test(data21)){
const err66 = {instancePath:instancePath+"/programs/" + i0+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data21};
if(vErrors === null){
vErrors = [err66];
}
else {
vErrors.push(err66);
}
errors++;
}
}
else {
const err67 = {instancePath:instancePath+"/programs/" + i0+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data21};
if(vErrors === null){
vErrors = [err67];
}
else {
vErrors.push(err67);
}
errors++;
}
}
if(data20.name !== undefined){
let data22 = data20.name;
if(typeof data22 === "string"){
if(func2(data22) > 120){
const err68 = {instancePath:instancePath+"/programs/" + i0+"/name",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data22};
if(vErrors === null){
vErrors = [err68];
}
else {
vErrors.push(err68);
}
errors++;
}
if(func2(data22) < 1){
const err69 = {instancePath:instancePath+"/programs/" + i0+"/name",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data22};
if(vErrors === null){
vErrors = [err69];
}
else {
vErrors.push(err69);
}
errors++;
}
}
else {
const err70 = {instancePath:instancePath+"/programs/" + i0+"/name",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data22};
if(vErrors === null){
vErrors = [err70];
}
else {
vErrors.push(err70);
}
errors++;
}
}
if(data20.use !== undefined){
let data23 = data20.use;
if(typeof data23 === "string"){
if(func2(data23) > 2000){
const err71 = {instancePath:instancePath+"/programs/" + i0+"/use",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data23};
if(vErrors === null){
vErrors = [err71];
}
else {
vErrors.push(err71);
}
errors++;
}
if(func2(data23) < 1){
const err72 = {instancePath:instancePath+"/programs/" + i0+"/use",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data23};
if(vErrors === null){
vErrors = [err72];
}
else {
vErrors.push(err72);
}
errors++;
}
}
else {
const err73 = {instancePath:instancePath+"/programs/" + i0+"/use",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data23};
if(vErrors === null){
vErrors = [err73];
}
else {
vErrors.push(err73);
}
errors++;
}
}
if(data20.facts !== undefined){
if(!(validate56(data20.facts, {instancePath:instancePath+"/programs/" + i0+"/facts",parentData:data20,parentDataProperty:"facts",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate56.errors : vErrors.concat(validate56.errors);
errors = vErrors.length;
}
}
if(data20.stages !== undefined){
let data25 = data20.stages;
if(Array.isArray(data25)){
if(data25.length < 1){
const err74 = {instancePath:instancePath+"/programs/" + i0+"/stages",schemaPath:"#/properties/programs/items/properties/stages/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema104.properties.programs.items.properties.stages,data:data25};
if(vErrors === null){
vErrors = [err74];
}
else {
vErrors.push(err74);
}
errors++;
}
const len1 = data25.length;
for(let i1=0; i1<len1; i1++){
let data26 = data25[i1];
if(data26 && typeof data26 == "object" && !Array.isArray(data26)){
if(data26.name === undefined){
const err75 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1,schemaPath:"#/properties/programs/items/properties/stages/items/required",keyword:"required",params:{missingProperty: "name"},message:"must have required property '"+"name"+"'",schema:schema104.properties.programs.items.properties.stages.items.required,parentSchema:schema104.properties.programs.items.properties.stages.items,data:data26};
if(vErrors === null){
vErrors = [err75];
}
else {
vErrors.push(err75);
}
errors++;
}
for(const key6 in data26){
if(!(((((key6 === "name") || (key6 === "temperature")) || (key6 === "time")) || (key6 === "pressure")) || (key6 === "note"))){
const err76 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1,schemaPath:"#/properties/programs/items/properties/stages/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key6},message:"must NOT have additional properties",schema:false,parentSchema:schema104.properties.programs.items.properties.stages.items,data:data26};
if(vErrors === null){
vErrors = [err76];
}
else {
vErrors.push(err76);
}
errors++;
}
}
if(data26.name !== undefined){
let data27 = data26.name;
if(typeof data27 === "string"){
if(func2(data27) > 120){
const err77 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/name",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data27};
if(vErrors === null){
vErrors = [err77];
}
else {
vErrors.push(err77);
}
errors++;
}
if(func2(data27) < 1){
const err78 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/name",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data27};
if(vErrors === null){
vErrors = [err78];
}
else {
vErrors.push(err78);
}
errors++;
}
}
else {
const err79 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/name",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data27};
if(vErrors === null){
vErrors = [err79];
}
else {
vErrors.push(err79);
}
errors++;
}
}
if(data26.temperature !== undefined){
let data28 = data26.temperature;
if(typeof data28 === "string"){
if(func2(data28) > 40){
const err80 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/temperature",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data28};
if(vErrors === null){
vErrors = [err80];
}
else {
vErrors.push(err80);
}
errors++;
}
if(!pattern51.test(data28)){
const err81 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/temperature",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data28};
if(vErrors === null){
vErrors = [err81];
}
else {
vErrors.push(err81);
}
errors++;
}
}
else {
const err82 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/temperature",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data28};
if(vErrors === null){
vErrors = [err82];
}
else {
vErrors.push(err82);
}
errors++;
}
}
if(data26.time !== undefined){
let data29 = data26.time;
if(typeof data29 === "string"){
if(func2(data29) > 40){
const err83 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/time",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data29};
if(vErrors === null){
vErrors = [err83];
}
else {
vErrors.push(err83);
}
errors++;
}
if(!pattern51.test(data29)){
const err84 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/time",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data29};
if(vErrors === null){
vErrors = [err84];
}
else {
vErrors.push(err84);
}
errors++;
}
}
else {
const err85 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/time",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data29};
if(vErrors === null){
vErrors = [err85];
}
else {
vErrors.push(err85);
}
errors++;
}
}
if(data26.pressure !== undefined){
let data30 = data26.pressure;
if(data30 && typeof data30 == "object" && !Array.isArray(data30)){
if(Object.keys(data30).length < 1){
const err86 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/pressure",schemaPath:"#/properties/programs/items/properties/stages/items/properties/pressure/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema104.properties.programs.items.properties.stages.items.properties.pressure,data:data30};
if(vErrors === null){
vErrors = [err86];
}
else {
vErrors.push(err86);
}
errors++;
}
for(const key7 in data30){
if(!(((key7 === "absolute") || (key7 === "gauge")) || (key7 === "altitude"))){
const err87 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/pressure",schemaPath:"#/properties/programs/items/properties/stages/items/properties/pressure/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key7},message:"must NOT have additional properties",schema:false,parentSchema:schema104.properties.programs.items.properties.stages.items.properties.pressure,data:data30};
if(vErrors === null){
vErrors = [err87];
}
else {
vErrors.push(err87);
}
errors++;
}
}
if(data30.absolute !== undefined){
let data31 = data30.absolute;
if(typeof data31 === "string"){
if(func2(data31) > 40){
const err88 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/pressure/absolute",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data31};
if(vErrors === null){
vErrors = [err88];
}
else {
vErrors.push(err88);
}
errors++;
}
if(!pattern51.test(data31)){
const err89 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/pressure/absolute",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data31};
if(vErrors === null){
vErrors = [err89];
}
else {
vErrors.push(err89);
}
errors++;
}
}
else {
const err90 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/pressure/absolute",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data31};
if(vErrors === null){
vErrors = [err90];
}
else {
vErrors.push(err90);
}
errors++;
}
}
if(data30.gauge !== undefined){
let data32 = data30.gauge;
if(typeof data32 === "string"){
if(func2(data32) > 40){
const err91 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/pressure/gauge",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data32};
if(vErrors === null){
vErrors = [err91];
}
else {
vErrors.push(err91);
}
errors++;
}
if(!pattern51.test(data32)){
const err92 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/pressure/gauge",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data32};
if(vErrors === null){
vErrors = [err92];
}
else {
vErrors.push(err92);
}
errors++;
}
}
else {
const err93 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/pressure/gauge",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data32};
if(vErrors === null){
vErrors = [err93];
}
else {
vErrors.push(err93);
}
errors++;
}
}
if(data30.altitude !== undefined){
let data33 = data30.altitude;
if(typeof data33 === "string"){
if(func2(data33) > 40){
const err94 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/pressure/altitude",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data33};
if(vErrors === null){
vErrors = [err94];
}
else {
vErrors.push(err94);
}
errors++;
}
if(!pattern51.test(data33)){
const err95 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/pressure/altitude",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data33};
if(vErrors === null){
vErrors = [err95];
}
else {
vErrors.push(err95);
}
errors++;
}
}
else {
const err96 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/pressure/altitude",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data33};
if(vErrors === null){
vErrors = [err96];
}
else {
vErrors.push(err96);
}
errors++;
}
}
}
else {
const err97 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/pressure",schemaPath:"#/properties/programs/items/properties/stages/items/properties/pressure/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema104.properties.programs.items.properties.stages.items.properties.pressure.type,parentSchema:schema104.properties.programs.items.properties.stages.items.properties.pressure,data:data30};
if(vErrors === null){
vErrors = [err97];
}
else {
vErrors.push(err97);
}
errors++;
}
}
if(data26.note !== undefined){
let data34 = data26.note;
if(typeof data34 === "string"){
if(func2(data34) > 120){
const err98 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/note",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data34};
if(vErrors === null){
vErrors = [err98];
}
else {
vErrors.push(err98);
}
errors++;
}
if(func2(data34) < 1){
const err99 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/note",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data34};
if(vErrors === null){
vErrors = [err99];
}
else {
vErrors.push(err99);
}
errors++;
}
}
else {
const err100 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1+"/note",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data34};
if(vErrors === null){
vErrors = [err100];
}
else {
vErrors.push(err100);
}
errors++;
}
}
}
else {
const err101 = {instancePath:instancePath+"/programs/" + i0+"/stages/" + i1,schemaPath:"#/properties/programs/items/properties/stages/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema104.properties.programs.items.properties.stages.items.type,parentSchema:schema104.properties.programs.items.properties.stages.items,data:data26};
if(vErrors === null){
vErrors = [err101];
}
else {
vErrors.push(err101);
}
errors++;
}
}
}
else {
const err102 = {instancePath:instancePath+"/programs/" + i0+"/stages",schemaPath:"#/properties/programs/items/properties/stages/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema104.properties.programs.items.properties.stages.type,parentSchema:schema104.properties.programs.items.properties.stages,data:data25};
if(vErrors === null){
vErrors = [err102];
}
else {
vErrors.push(err102);
}
errors++;
}
}
if(data20.note !== undefined){
let data35 = data20.note;
if(typeof data35 === "string"){
if(func2(data35) > 2000){
const err103 = {instancePath:instancePath+"/programs/" + i0+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data35};
if(vErrors === null){
vErrors = [err103];
}
else {
vErrors.push(err103);
}
errors++;
}
if(func2(data35) < 1){
const err104 = {instancePath:instancePath+"/programs/" + i0+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data35};
if(vErrors === null){
vErrors = [err104];
}
else {
vErrors.push(err104);
}
errors++;
}
}
else {
const err105 = {instancePath:instancePath+"/programs/" + i0+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data35};
if(vErrors === null){
vErrors = [err105];
}
else {
vErrors.push(err105);
}
errors++;
}
}
}
else {
const err106 = {instancePath:instancePath+"/programs/" + i0,schemaPath:"#/properties/programs/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema104.properties.programs.items.type,parentSchema:schema104.properties.programs.items,data:data20};
if(vErrors === null){
vErrors = [err106];
}
else {
vErrors.push(err106);
}
errors++;
}
}
}
else {
const err107 = {instancePath:instancePath+"/programs",schemaPath:"#/properties/programs/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema104.properties.programs.type,parentSchema:schema104.properties.programs,data:data19};
if(vErrors === null){
vErrors = [err107];
}
else {
vErrors.push(err107);
}
errors++;
}
}
if(data.opening !== undefined){
let data36 = data.opening;
if(Array.isArray(data36)){
if(data36.length < 1){
const err108 = {instancePath:instancePath+"/opening",schemaPath:"#/properties/opening/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema104.properties.opening,data:data36};
if(vErrors === null){
vErrors = [err108];
}
else {
vErrors.push(err108);
}
errors++;
}
const len2 = data36.length;
for(let i2=0; i2<len2; i2++){
let data37 = data36[i2];
if(typeof data37 === "string"){
if(func2(data37) > 2000){
const err109 = {instancePath:instancePath+"/opening/" + i2,schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data37};
if(vErrors === null){
vErrors = [err109];
}
else {
vErrors.push(err109);
}
errors++;
}
if(func2(data37) < 1){
const err110 = {instancePath:instancePath+"/opening/" + i2,schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data37};
if(vErrors === null){
vErrors = [err110];
}
else {
vErrors.push(err110);
}
errors++;
}
}
else {
const err111 = {instancePath:instancePath+"/opening/" + i2,schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data37};
if(vErrors === null){
vErrors = [err111];
}
else {
vErrors.push(err111);
}
errors++;
}
}
}
else {
const err112 = {instancePath:instancePath+"/opening",schemaPath:"#/properties/opening/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema104.properties.opening.type,parentSchema:schema104.properties.opening,data:data36};
if(vErrors === null){
vErrors = [err112];
}
else {
vErrors.push(err112);
}
errors++;
}
}
if(data.note !== undefined){
let data38 = data.note;
if(typeof data38 === "string"){
if(func2(data38) > 2000){
const err113 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data38};
if(vErrors === null){
vErrors = [err113];
}
else {
vErrors.push(err113);
}
errors++;
}
if(func2(data38) < 1){
const err114 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data38};
if(vErrors === null){
vErrors = [err114];
}
else {
vErrors.push(err114);
}
errors++;
}
}
else {
const err115 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data38};
if(vErrors === null){
vErrors = [err115];
}
else {
vErrors.push(err115);
}
errors++;
}
}
}
else {
const err116 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema104.type,parentSchema:schema104,data};
if(vErrors === null){
vErrors = [err116];
}
else {
vErrors.push(err116);
}
errors++;
}
validate55.errors = vErrors;
return errors === 0;
}
validate55.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_facts = validate59;
const schema127 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"facts.json","title":"Facts","description":"Typed inputs of conditions.","type":"object","additionalProperties":false,"required":["kind","facts"],"properties":{"kind":{"const":"facts","description":"The kind of document; it picks this schema."},"facts":{"type":"object","additionalProperties":{"type":"object","additionalProperties":false,"required":["label","type","question"],"properties":{"label":{"$ref":"defs.json#/$defs/label"},"type":{"enum":["enum","set","boolean","quantity","count","date","answer"],"description":"`answer` is the outcome of a decision, used as a fact."},"of":{"$ref":"defs.json#/$defs/id","description":"For enum and set: the domain of terms. For answer: the id of the decision."},"unit":{"type":"string","minLength":1,"description":"For quantity: the unit that plain numbers are in."},"minimum":{"$ref":"defs.json#/$defs/quantity","description":"Least possible value."},"maximum":{"$ref":"defs.json#/$defs/quantity","description":"Greatest possible value."},"stated-by":{"enum":["person","instrument","program","machine","clinic"],"description":"Who states it: a person who is asked (the default), the instrument register, a machine sheet (of a program or the machine), or the clinic folder."},"question":{"type":"string","minLength":1,"description":"The question to put to a person."},"help":{"$ref":"defs.json#/$defs/text","description":"How to find the answer."},"only-when":{"$ref":"defs.json#/$defs/condition","description":"Outside this the fact has no meaning and tests on it are false."}}},"propertyNames":{"$ref":"defs.json#/$defs/id"},"minProperties":1}}};

function validate60(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate60.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(Object.keys(data).length < 1){
const err0 = {instancePath,schemaPath:"#/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
for(const key0 in data){
if(!(((key0 === "all") || (key0 === "any")) || (key0 === "not"))){
if(!(validate23(data[key0], {instancePath:instancePath+"/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"),parentData:data,parentDataProperty:key0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate23.errors : vErrors.concat(validate23.errors);
errors = vErrors.length;
}
}
}
if(data.all !== undefined){
let data1 = data.all;
if(Array.isArray(data1)){
if(data1.length < 1){
const err1 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
const len0 = data1.length;
for(let i0=0; i0<len0; i0++){
if(!(validate22(data1[i0], {instancePath:instancePath+"/all/" + i0,parentData:data1,parentDataProperty:i0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err2 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.all.type,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.any !== undefined){
let data3 = data.any;
if(Array.isArray(data3)){
if(data3.length < 1){
const err3 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
const len1 = data3.length;
for(let i1=0; i1<len1; i1++){
if(!(validate22(data3[i1], {instancePath:instancePath+"/any/" + i1,parentData:data3,parentDataProperty:i1,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err4 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.any.type,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.not !== undefined){
if(!(validate22(data.not, {instancePath:instancePath+"/not",parentData:data,parentDataProperty:"not",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err5 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema37.type,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
validate60.errors = vErrors;
return errors === 0;
}
validate60.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate59(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="facts.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate59.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema127.required,parentSchema:schema127,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.facts === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "facts"},message:"must have required property '"+"facts"+"'",schema:schema127.required,parentSchema:schema127,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!((key0 === "kind") || (key0 === "facts"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema127,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("facts" !== data0){
const err3 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "facts"},message:"must be equal to constant",schema:"facts",parentSchema:schema127.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.facts !== undefined){
let data1 = data.facts;
if(data1 && typeof data1 == "object" && !Array.isArray(data1)){
if(Object.keys(data1).length < 1){
const err4 = {instancePath:instancePath+"/facts",schemaPath:"#/properties/facts/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema127.properties.facts,data:data1};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
for(const key1 in data1){
const _errs5 = errors;
if(typeof key1 === "string"){
if(func2(key1) > 80){
const err5 = {instancePath:instancePath+"/facts",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(!pattern4.test(key1)){
const err6 = {instancePath:instancePath+"/facts",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/facts",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
var valid1 = _errs5 === errors;
if(!valid1){
const err8 = {instancePath:instancePath+"/facts",schemaPath:"#/properties/facts/propertyNames",keyword:"propertyNames",params:{propertyName: key1},message:"property name must be valid",schema:schema127.properties.facts.propertyNames,parentSchema:schema127.properties.facts,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
for(const key2 in data1){
let data2 = data1[key2];
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.label === undefined){
const err9 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/facts/additionalProperties/required",keyword:"required",params:{missingProperty: "label"},message:"must have required property '"+"label"+"'",schema:schema127.properties.facts.additionalProperties.required,parentSchema:schema127.properties.facts.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(data2.type === undefined){
const err10 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/facts/additionalProperties/required",keyword:"required",params:{missingProperty: "type"},message:"must have required property '"+"type"+"'",schema:schema127.properties.facts.additionalProperties.required,parentSchema:schema127.properties.facts.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
if(data2.question === undefined){
const err11 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/facts/additionalProperties/required",keyword:"required",params:{missingProperty: "question"},message:"must have required property '"+"question"+"'",schema:schema127.properties.facts.additionalProperties.required,parentSchema:schema127.properties.facts.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
for(const key3 in data2){
if(!(func1.call(schema127.properties.facts.additionalProperties.properties, key3))){
const err12 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/facts/additionalProperties/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key3},message:"must NOT have additional properties",schema:false,parentSchema:schema127.properties.facts.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
if(data2.label !== undefined){
let data3 = data2.label;
if(typeof data3 === "string"){
if(func2(data3) > 120){
const err13 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/label",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
if(func2(data3) < 1){
const err14 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/label",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
else {
const err15 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/label",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
}
if(data2.type !== undefined){
let data4 = data2.type;
if(!(((((((data4 === "enum") || (data4 === "set")) || (data4 === "boolean")) || (data4 === "quantity")) || (data4 === "count")) || (data4 === "date")) || (data4 === "answer"))){
const err16 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/type",schemaPath:"#/properties/facts/additionalProperties/properties/type/enum",keyword:"enum",params:{allowedValues: schema127.properties.facts.additionalProperties.properties.type.enum},message:"must be equal to one of the allowed values",schema:schema127.properties.facts.additionalProperties.properties.type.enum,parentSchema:schema127.properties.facts.additionalProperties.properties.type,data:data4};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
if(data2.of !== undefined){
let data5 = data2.of;
if(typeof data5 === "string"){
if(func2(data5) > 80){
const err17 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/of",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data5};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
if(!pattern4.test(data5)){
const err18 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/of",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data5};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
else {
const err19 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/of",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data5};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
if(data2.unit !== undefined){
let data6 = data2.unit;
if(typeof data6 === "string"){
if(func2(data6) < 1){
const err20 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/unit",schemaPath:"#/properties/facts/additionalProperties/properties/unit/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema127.properties.facts.additionalProperties.properties.unit,data:data6};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
else {
const err21 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/unit",schemaPath:"#/properties/facts/additionalProperties/properties/unit/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema127.properties.facts.additionalProperties.properties.unit.type,parentSchema:schema127.properties.facts.additionalProperties.properties.unit,data:data6};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
if(data2.minimum !== undefined){
let data7 = data2.minimum;
if(typeof data7 === "string"){
if(func2(data7) > 40){
const err22 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/minimum",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data7};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
if(!pattern51.test(data7)){
const err23 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/minimum",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data7};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
else {
const err24 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/minimum",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data7};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
if(data2.maximum !== undefined){
let data8 = data2.maximum;
if(typeof data8 === "string"){
if(func2(data8) > 40){
const err25 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/maximum",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data8};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
if(!pattern51.test(data8)){
const err26 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/maximum",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data8};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
else {
const err27 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/maximum",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data8};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
}
if(data2["stated-by"] !== undefined){
let data9 = data2["stated-by"];
if(!(((((data9 === "person") || (data9 === "instrument")) || (data9 === "program")) || (data9 === "machine")) || (data9 === "clinic"))){
const err28 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/stated-by",schemaPath:"#/properties/facts/additionalProperties/properties/stated-by/enum",keyword:"enum",params:{allowedValues: schema127.properties.facts.additionalProperties.properties["stated-by"].enum},message:"must be equal to one of the allowed values",schema:schema127.properties.facts.additionalProperties.properties["stated-by"].enum,parentSchema:schema127.properties.facts.additionalProperties.properties["stated-by"],data:data9};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
}
if(data2.question !== undefined){
let data10 = data2.question;
if(typeof data10 === "string"){
if(func2(data10) < 1){
const err29 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/question",schemaPath:"#/properties/facts/additionalProperties/properties/question/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema127.properties.facts.additionalProperties.properties.question,data:data10};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
}
else {
const err30 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/question",schemaPath:"#/properties/facts/additionalProperties/properties/question/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema127.properties.facts.additionalProperties.properties.question.type,parentSchema:schema127.properties.facts.additionalProperties.properties.question,data:data10};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
}
if(data2.help !== undefined){
let data11 = data2.help;
if(typeof data11 === "string"){
if(func2(data11) > 2000){
const err31 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/help",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data11};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
if(func2(data11) < 1){
const err32 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/help",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data11};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
}
else {
const err33 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/help",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data11};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
}
if(data2["only-when"] !== undefined){
if(!(validate60(data2["only-when"], {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/only-when",parentData:data2,parentDataProperty:"only-when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate60.errors : vErrors.concat(validate60.errors);
errors = vErrors.length;
}
}
}
else {
const err34 = {instancePath:instancePath+"/facts/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/facts/additionalProperties/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema127.properties.facts.additionalProperties.type,parentSchema:schema127.properties.facts.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
}
}
else {
const err35 = {instancePath:instancePath+"/facts",schemaPath:"#/properties/facts/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema127.properties.facts.type,parentSchema:schema127.properties.facts,data:data1};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
}
}
else {
const err36 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema127.type,parentSchema:schema127,data};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
}
validate59.errors = vErrors;
return errors === 0;
}
validate59.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_fixture = validate66;
const schema135 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"fixture.json","title":"Fixture","description":"Published values that the rules must meet.","type":"object","additionalProperties":false,"required":["kind","fixtures"],"properties":{"kind":{"const":"fixture","description":"The kind of document; it picks this schema."},"region":{"type":"string","pattern":"^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$","description":"Only where this region’s pack is used; everywhere when left out."},"fixtures":{"type":"object","additionalProperties":{"type":"object","required":["prove"],"discriminator":{"propertyName":"prove"},"oneOf":[{"type":"object","additionalProperties":false,"required":["prove","title","source","calculation","given","result"],"properties":{"prove":{"const":"calculation","description":"A published result of a formula."},"title":{"$ref":"defs.json#/$defs/label"},"from":{"$ref":"defs.json#/$defs/date","description":"First day on which it holds; that of the source when left out."},"until":{"$ref":"defs.json#/$defs/date","description":"Last day on which it holds; that of the source when left out."},"source":{"$ref":"defs.json#/$defs/source"},"calculation":{"enum":["a0","a0-lower","a0-held","a0-mean","f0","f0-lower","f0-held","f0-mean","equivalent-time","log-reduction","hold","steam-pressure","steam-gauge","steam-temperature","steam-temperature-of-gauge","steam-difference","air-pressure","leak-rate","convert","conductivity","softener","softener-salt","detergent-dose","detergent-cycles"]},"given":{"type":"object","additionalProperties":{"type":"string","minLength":1,"maxLength":400},"description":"Quantities by the names of the calculation's inputs; the readings of a sensor with commas between."},"result":{"$ref":"defs.json#/$defs/quantity"},"within":{"$ref":"defs.json#/$defs/quantity","description":"How far the calculation may be off. Without it, it must give every digit that is printed in `result`."}}},{"type":"object","additionalProperties":false,"required":["prove","title","source","limit"],"properties":{"prove":{"const":"limit","description":"A value that a limit must equal or be at least as strict as."},"title":{"$ref":"defs.json#/$defs/label"},"from":{"$ref":"defs.json#/$defs/date","description":"First day on which it holds; that of the source when left out."},"until":{"$ref":"defs.json#/$defs/date","description":"Last day on which it holds; that of the source when left out."},"source":{"$ref":"defs.json#/$defs/source"},"limit":{"$ref":"defs.json#/$defs/id"},"equals":{"$ref":"defs.json#/$defs/quantity","description":"The layer that cites this source says exactly this, and the value in force is at least as strict."},"at-least-as-strict-as":{"$ref":"defs.json#/$defs/quantity","description":"The value in force is this or stricter."}}},{"type":"object","additionalProperties":false,"required":["prove","title","source","task"],"properties":{"prove":{"const":"interval","description":"An interval that a task must equal or be at least as frequent as."},"title":{"$ref":"defs.json#/$defs/label"},"from":{"$ref":"defs.json#/$defs/date","description":"First day on which it holds; that of the source when left out."},"until":{"$ref":"defs.json#/$defs/date","description":"Last day on which it holds; that of the source when left out."},"source":{"$ref":"defs.json#/$defs/source"},"task":{"$ref":"defs.json#/$defs/id"},"equals":{"$ref":"defs.json#/$defs/interval","description":"The layer that cites this source says exactly this, and the interval in force is at least as frequent."},"at-least-as-strict-as":{"$ref":"defs.json#/$defs/interval","description":"The interval in force is this or more frequent."}}},{"type":"object","additionalProperties":false,"required":["prove","title","source","decision","given"],"properties":{"prove":{"const":"situation","description":"A situation and its answer."},"title":{"$ref":"defs.json#/$defs/label"},"from":{"$ref":"defs.json#/$defs/date","description":"First day on which it holds; that of the source when left out."},"until":{"$ref":"defs.json#/$defs/date","description":"Last day on which it holds; that of the source when left out."},"source":{"$ref":"defs.json#/$defs/source"},"decision":{"$ref":"defs.json#/$defs/id"},"given":{"$ref":"defs.json#/$defs/situation"},"outcome":{"$ref":"defs.json#/$defs/id"},"at-least":{"$ref":"defs.json#/$defs/id","description":"The outcome must be this or a more restrictive one."},"not":{"$ref":"defs.json#/$defs/id","description":"The outcome must not be this."}}},{"type":"object","additionalProperties":false,"required":["prove","title","source","decision","fact","threshold"],"properties":{"prove":{"const":"boundary","description":"The answers just below, at and just above a threshold that a source states."},"title":{"$ref":"defs.json#/$defs/label"},"from":{"$ref":"defs.json#/$defs/date","description":"First day on which it holds; that of the source when left out."},"until":{"$ref":"defs.json#/$defs/date","description":"Last day on which it holds; that of the source when left out."},"source":{"$ref":"defs.json#/$defs/source"},"decision":{"$ref":"defs.json#/$defs/id"},"fact":{"$ref":"defs.json#/$defs/id","description":"The quantity, count or date that crosses the threshold."},"threshold":{"type":["string","number"],"description":"The published value of the fact."},"given":{"$ref":"defs.json#/$defs/situation","description":"All other facts."},"program":{"$ref":"defs.json#/$defs/situation","description":"For a choice: what the program states besides the fact."},"below":{"$ref":"defs.json#/$defs/id","description":"The outcome just below; for a choice `fits` or `does-not-fit`."},"at":{"$ref":"defs.json#/$defs/id","description":"The outcome at the threshold."},"above":{"$ref":"defs.json#/$defs/id","description":"The outcome just above."}}},{"type":"object","additionalProperties":false,"required":["prove","title","source","decision","given","program","fits"],"properties":{"prove":{"const":"program","description":"A program that a choice must offer or refuse."},"title":{"$ref":"defs.json#/$defs/label"},"from":{"$ref":"defs.json#/$defs/date","description":"First day on which it holds; that of the source when left out."},"until":{"$ref":"defs.json#/$defs/date","description":"Last day on which it holds; that of the source when left out."},"source":{"$ref":"defs.json#/$defs/source"},"decision":{"$ref":"defs.json#/$defs/id"},"given":{"$ref":"defs.json#/$defs/situation"},"program":{"$ref":"defs.json#/$defs/situation","description":"What the program states, by fact."},"fits":{"type":"boolean"}}},{"type":"object","additionalProperties":false,"required":["prove","title","because","positions"],"properties":{"prove":{"const":"disagreement","description":"Sources that do not say the same."},"title":{"$ref":"defs.json#/$defs/label"},"from":{"$ref":"defs.json#/$defs/date","description":"First day on which it holds; that of the source when left out."},"until":{"$ref":"defs.json#/$defs/date","description":"Last day on which it holds; that of the source when left out."},"about":{"$ref":"defs.json#/$defs/id","description":"The limit or task that they speak about."},"because":{"$ref":"defs.json#/$defs/text","description":"What the rules do about it, and why."},"positions":{"type":"array","minItems":2,"items":{"type":"object","additionalProperties":false,"required":["says","source"],"properties":{"region":{"type":"string","pattern":"^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$","description":"Where this is the guidance."},"says":{"$ref":"defs.json#/$defs/text","description":"What the source says, in our words."},"value":{"type":"string","minLength":1,"description":"The value of the limit or task, or `none` where nothing is asked for."},"source":{"$ref":"defs.json#/$defs/source"}}}}}}]},"propertyNames":{"$ref":"defs.json#/$defs/id"},"minProperties":1}}};

function validate67(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate67.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if((typeof data !== "string") && (!(data && typeof data == "object" && !Array.isArray(data)))){
const err0 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: schema96.type},message:"must be string,object",schema:schema96.type,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(typeof data === "string"){
if(!pattern40.test(data)){
const err1 = {instancePath,schemaPath:"#/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*$",parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema96.required,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
for(const key0 in data){
if(!(((((key0 === "id") || (key0 === "at")) || (key0 === "evidence")) || (key0 === "checked")) || (key0 === "note"))){
const err3 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err4 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(!pattern4.test(data0)){
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
else {
const err6 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
if(data.at !== undefined){
let data1 = data.at;
if(typeof data1 === "string"){
if(func2(data1) < 1){
const err7 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
else {
const err8 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema96.properties.at.type,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.evidence !== undefined){
let data2 = data.evidence;
if(!((((data2 === "read") || (data2 === "recalled")) || (data2 === "computed")) || (data2 === "decided"))){
const err9 = {instancePath:instancePath+"/evidence",schemaPath:"defs.json#/$defs/evidence/enum",keyword:"enum",params:{allowedValues: schema98.enum},message:"must be equal to one of the allowed values",schema:schema98.enum,parentSchema:schema98,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
if(data.checked !== undefined){
let data3 = data.checked;
if(typeof data3 === "string"){
if(!pattern18.test(data3)){
const err10 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
else {
const err11 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.note !== undefined){
let data4 = data.note;
if(typeof data4 === "string"){
if(func2(data4) > 2000){
const err12 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data4) < 1){
const err13 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
}
validate67.errors = vErrors;
return errors === 0;
}
validate67.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate72(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate72.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
for(const key0 in data){
const _errs1 = errors;
if(typeof key0 === "string"){
if(func2(key0) > 80){
const err0 = {instancePath,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(!pattern4.test(key0)){
const err1 = {instancePath,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
else {
const err2 = {instancePath,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
var valid0 = _errs1 === errors;
if(!valid0){
const err3 = {instancePath,schemaPath:"#/propertyNames",keyword:"propertyNames",params:{propertyName: key0},message:"property name must be valid",schema:schema45.propertyNames,parentSchema:schema45,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
for(const key1 in data){
let data0 = data[key1];
if((((typeof data0 !== "string") && (!((typeof data0 == "number") && (isFinite(data0))))) && (typeof data0 !== "boolean")) && (!(Array.isArray(data0)))){
const err4 = {instancePath:instancePath+"/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/additionalProperties/type",keyword:"type",params:{type: schema45.additionalProperties.type},message:"must be string,number,boolean,array",schema:schema45.additionalProperties.type,parentSchema:schema45.additionalProperties,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(Array.isArray(data0)){
const len0 = data0.length;
for(let i0=0; i0<len0; i0++){
let data1 = data0[i0];
if(typeof data1 !== "string"){
const err5 = {instancePath:instancePath+"/" + key1.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + i0,schemaPath:"#/additionalProperties/items/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema45.additionalProperties.items.type,parentSchema:schema45.additionalProperties.items,data:data1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
}
}
}
else {
const err6 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema45.type,parentSchema:schema45,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
validate72.errors = vErrors;
return errors === 0;
}
validate72.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate66(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="fixture.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate66.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema135.required,parentSchema:schema135,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.fixtures === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "fixtures"},message:"must have required property '"+"fixtures"+"'",schema:schema135.required,parentSchema:schema135,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!(((key0 === "kind") || (key0 === "region")) || (key0 === "fixtures"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema135,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("fixture" !== data0){
const err3 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "fixture"},message:"must be equal to constant",schema:"fixture",parentSchema:schema135.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.region !== undefined){
let data1 = data.region;
if(typeof data1 === "string"){
if(!pattern16.test(data1)){
const err4 = {instancePath:instancePath+"/region",schemaPath:"#/properties/region/pattern",keyword:"pattern",params:{pattern: "^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$"},message:"must match pattern \""+"^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$"+"\"",schema:"^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$",parentSchema:schema135.properties.region,data:data1};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
else {
const err5 = {instancePath:instancePath+"/region",schemaPath:"#/properties/region/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema135.properties.region.type,parentSchema:schema135.properties.region,data:data1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
if(data.fixtures !== undefined){
let data2 = data.fixtures;
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(Object.keys(data2).length < 1){
const err6 = {instancePath:instancePath+"/fixtures",schemaPath:"#/properties/fixtures/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema135.properties.fixtures,data:data2};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
for(const key1 in data2){
const _errs7 = errors;
if(typeof key1 === "string"){
if(func2(key1) > 80){
const err7 = {instancePath:instancePath+"/fixtures",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
if(!pattern4.test(key1)){
const err8 = {instancePath:instancePath+"/fixtures",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
else {
const err9 = {instancePath:instancePath+"/fixtures",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
var valid1 = _errs7 === errors;
if(!valid1){
const err10 = {instancePath:instancePath+"/fixtures",schemaPath:"#/properties/fixtures/propertyNames",keyword:"propertyNames",params:{propertyName: key1},message:"property name must be valid",schema:schema135.properties.fixtures.propertyNames,parentSchema:schema135.properties.fixtures,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
for(const key2 in data2){
let data3 = data2[key2];
if(data3 && typeof data3 == "object" && !Array.isArray(data3)){
if(data3.prove === undefined){
const err11 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/required",keyword:"required",params:{missingProperty: "prove"},message:"must have required property '"+"prove"+"'",schema:schema135.properties.fixtures.additionalProperties.required,parentSchema:schema135.properties.fixtures.additionalProperties,data:data3};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
const tag0 = data3.prove;
if(typeof tag0 == "string"){
if(tag0 === "calculation"){
if(data3 && typeof data3 == "object" && !Array.isArray(data3)){
if(data3.prove === undefined){
const err12 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/required",keyword:"required",params:{missingProperty: "prove"},message:"must have required property '"+"prove"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[0].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0],data:data3};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(data3.title === undefined){
const err13 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[0].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0],data:data3};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
if(data3.source === undefined){
const err14 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[0].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0],data:data3};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
if(data3.calculation === undefined){
const err15 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/required",keyword:"required",params:{missingProperty: "calculation"},message:"must have required property '"+"calculation"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[0].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0],data:data3};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(data3.given === undefined){
const err16 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/required",keyword:"required",params:{missingProperty: "given"},message:"must have required property '"+"given"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[0].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0],data:data3};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
if(data3.result === undefined){
const err17 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/required",keyword:"required",params:{missingProperty: "result"},message:"must have required property '"+"result"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[0].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0],data:data3};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
for(const key3 in data3){
if(!(func1.call(schema135.properties.fixtures.additionalProperties.oneOf[0].properties, key3))){
const err18 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key3},message:"must NOT have additional properties",schema:false,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0],data:data3};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
if(data3.prove !== undefined){
let data4 = data3.prove;
if("calculation" !== data4){
const err19 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/prove",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/properties/prove/const",keyword:"const",params:{allowedValue: "calculation"},message:"must be equal to constant",schema:"calculation",parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0].properties.prove,data:data4};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
if(data3.title !== undefined){
let data5 = data3.title;
if(typeof data5 === "string"){
if(func2(data5) > 120){
const err20 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data5};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
if(func2(data5) < 1){
const err21 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data5};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
else {
const err22 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data5};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
if(data3.from !== undefined){
let data6 = data3.from;
if(typeof data6 === "string"){
if(!pattern18.test(data6)){
const err23 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data6};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
else {
const err24 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data6};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
if(data3.until !== undefined){
let data7 = data3.until;
if(typeof data7 === "string"){
if(!pattern18.test(data7)){
const err25 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data7};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
}
else {
const err26 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data7};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
if(data3.source !== undefined){
if(!(validate67(data3.source, {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/source",parentData:data3,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate67.errors : vErrors.concat(validate67.errors);
errors = vErrors.length;
}
}
if(data3.calculation !== undefined){
let data9 = data3.calculation;
if(!((((((((((((((((((((((((data9 === "a0") || (data9 === "a0-lower")) || (data9 === "a0-held")) || (data9 === "a0-mean")) || (data9 === "f0")) || (data9 === "f0-lower")) || (data9 === "f0-held")) || (data9 === "f0-mean")) || (data9 === "equivalent-time")) || (data9 === "log-reduction")) || (data9 === "hold")) || (data9 === "steam-pressure")) || (data9 === "steam-gauge")) || (data9 === "steam-temperature")) || (data9 === "steam-temperature-of-gauge")) || (data9 === "steam-difference")) || (data9 === "air-pressure")) || (data9 === "leak-rate")) || (data9 === "convert")) || (data9 === "conductivity")) || (data9 === "softener")) || (data9 === "softener-salt")) || (data9 === "detergent-dose")) || (data9 === "detergent-cycles"))){
const err27 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/calculation",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/properties/calculation/enum",keyword:"enum",params:{allowedValues: schema135.properties.fixtures.additionalProperties.oneOf[0].properties.calculation.enum},message:"must be equal to one of the allowed values",schema:schema135.properties.fixtures.additionalProperties.oneOf[0].properties.calculation.enum,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0].properties.calculation,data:data9};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
}
if(data3.given !== undefined){
let data10 = data3.given;
if(data10 && typeof data10 == "object" && !Array.isArray(data10)){
for(const key4 in data10){
let data11 = data10[key4];
if(typeof data11 === "string"){
if(func2(data11) > 400){
const err28 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/given/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/properties/given/additionalProperties/maxLength",keyword:"maxLength",params:{limit: 400},message:"must NOT have more than 400 characters",schema:400,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0].properties.given.additionalProperties,data:data11};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
if(func2(data11) < 1){
const err29 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/given/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/properties/given/additionalProperties/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0].properties.given.additionalProperties,data:data11};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
}
else {
const err30 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/given/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/properties/given/additionalProperties/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema135.properties.fixtures.additionalProperties.oneOf[0].properties.given.additionalProperties.type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0].properties.given.additionalProperties,data:data11};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
}
}
else {
const err31 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/given",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/properties/given/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema135.properties.fixtures.additionalProperties.oneOf[0].properties.given.type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0].properties.given,data:data10};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
}
if(data3.result !== undefined){
let data12 = data3.result;
if(typeof data12 === "string"){
if(func2(data12) > 40){
const err32 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/result",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data12};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
if(!pattern51.test(data12)){
const err33 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/result",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data12};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
}
else {
const err34 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/result",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data12};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
}
if(data3.within !== undefined){
let data13 = data3.within;
if(typeof data13 === "string"){
if(func2(data13) > 40){
const err35 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/within",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data13};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
if(!pattern51.test(data13)){
const err36 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/within",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data13};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
}
}
else {
const err37 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/within",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data13};
if(vErrors === null){
vErrors = [err37];
}
else {
vErrors.push(err37);
}
errors++;
}
}
}
else {
const err38 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/0/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema135.properties.fixtures.additionalProperties.oneOf[0].type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[0],data:data3};
if(vErrors === null){
vErrors = [err38];
}
else {
vErrors.push(err38);
}
errors++;
}
var props0 = true;
}
else if(tag0 === "limit"){
if(data3 && typeof data3 == "object" && !Array.isArray(data3)){
if(data3.prove === undefined){
const err39 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/1/required",keyword:"required",params:{missingProperty: "prove"},message:"must have required property '"+"prove"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[1].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[1],data:data3};
if(vErrors === null){
vErrors = [err39];
}
else {
vErrors.push(err39);
}
errors++;
}
if(data3.title === undefined){
const err40 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/1/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[1].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[1],data:data3};
if(vErrors === null){
vErrors = [err40];
}
else {
vErrors.push(err40);
}
errors++;
}
if(data3.source === undefined){
const err41 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/1/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[1].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[1],data:data3};
if(vErrors === null){
vErrors = [err41];
}
else {
vErrors.push(err41);
}
errors++;
}
if(data3.limit === undefined){
const err42 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/1/required",keyword:"required",params:{missingProperty: "limit"},message:"must have required property '"+"limit"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[1].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[1],data:data3};
if(vErrors === null){
vErrors = [err42];
}
else {
vErrors.push(err42);
}
errors++;
}
for(const key5 in data3){
if(!((((((((key5 === "prove") || (key5 === "title")) || (key5 === "from")) || (key5 === "until")) || (key5 === "source")) || (key5 === "limit")) || (key5 === "equals")) || (key5 === "at-least-as-strict-as"))){
const err43 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/1/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key5},message:"must NOT have additional properties",schema:false,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[1],data:data3};
if(vErrors === null){
vErrors = [err43];
}
else {
vErrors.push(err43);
}
errors++;
}
}
if(data3.prove !== undefined){
let data14 = data3.prove;
if("limit" !== data14){
const err44 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/prove",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/1/properties/prove/const",keyword:"const",params:{allowedValue: "limit"},message:"must be equal to constant",schema:"limit",parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[1].properties.prove,data:data14};
if(vErrors === null){
vErrors = [err44];
}
else {
vErrors.push(err44);
}
errors++;
}
}
if(data3.title !== undefined){
let data15 = data3.title;
if(typeof data15 === "string"){
if(func2(data15) > 120){
const err45 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data15};
if(vErrors === null){
vErrors = [err45];
}
else {
vErrors.push(err45);
}
errors++;
}
if(func2(data15) < 1){
const err46 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data15};
if(vErrors === null){
vErrors = [err46];
}
else {
vErrors.push(err46);
}
errors++;
}
}
else {
const err47 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data15};
if(vErrors === null){
vErrors = [err47];
}
else {
vErrors.push(err47);
}
errors++;
}
}
if(data3.from !== undefined){
let data16 = data3.from;
if(typeof data16 === "string"){
if(!pattern18.test(data16)){
const err48 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data16};
if(vErrors === null){
vErrors = [err48];
}
else {
vErrors.push(err48);
}
errors++;
}
}
else {
const err49 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data16};
if(vErrors === null){
vErrors = [err49];
}
else {
vErrors.push(err49);
}
errors++;
}
}
if(data3.until !== undefined){
let data17 = data3.until;
if(typeof data17 === "string"){
if(!pattern18.test(data17)){
const err50 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data17};
if(vErrors === null){
vErrors = [err50];
}
else {
vErrors.push(err50);
}
errors++;
}
}
else {
const err51 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data17};
if(vErrors === null){
vErrors = [err51];
}
else {
vErrors.push(err51);
}
errors++;
}
}
if(data3.source !== undefined){
if(!(validate67(data3.source, {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/source",parentData:data3,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate67.errors : vErrors.concat(validate67.errors);
errors = vErrors.length;
}
}
if(data3.limit !== undefined){
let data19 = data3.limit;
if(typeof data19 === "string"){
if(func2(data19) > 80){
const err52 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/limit",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data19};
if(vErrors === null){
vErrors = [err52];
}
else {
vErrors.push(err52);
}
errors++;
}
if(!pattern4.test(data19)){
const err53 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/limit",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data19};
if(vErrors === null){
vErrors = [err53];
}
else {
vErrors.push(err53);
}
errors++;
}
}
else {
const err54 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/limit",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data19};
if(vErrors === null){
vErrors = [err54];
}
else {
vErrors.push(err54);
}
errors++;
}
}
if(data3.equals !== undefined){
let data20 = data3.equals;
if(typeof data20 === "string"){
if(func2(data20) > 40){
const err55 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/equals",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data20};
if(vErrors === null){
vErrors = [err55];
}
else {
vErrors.push(err55);
}
errors++;
}
if(!pattern51.test(data20)){
const err56 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/equals",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data20};
if(vErrors === null){
vErrors = [err56];
}
else {
vErrors.push(err56);
}
errors++;
}
}
else {
const err57 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/equals",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data20};
if(vErrors === null){
vErrors = [err57];
}
else {
vErrors.push(err57);
}
errors++;
}
}
if(data3["at-least-as-strict-as"] !== undefined){
let data21 = data3["at-least-as-strict-as"];
if(typeof data21 === "string"){
if(func2(data21) > 40){
const err58 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/at-least-as-strict-as",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data21};
if(vErrors === null){
vErrors = [err58];
}
else {
vErrors.push(err58);
}
errors++;
}
if(!pattern51.test(data21)){
const err59 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/at-least-as-strict-as",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data21};
if(vErrors === null){
vErrors = [err59];
}
else {
vErrors.push(err59);
}
errors++;
}
}
else {
const err60 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/at-least-as-strict-as",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data21};
if(vErrors === null){
vErrors = [err60];
}
else {
vErrors.push(err60);
}
errors++;
}
}
}
else {
const err61 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/1/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema135.properties.fixtures.additionalProperties.oneOf[1].type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[1],data:data3};
if(vErrors === null){
vErrors = [err61];
}
else {
vErrors.push(err61);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "interval"){
if(data3 && typeof data3 == "object" && !Array.isArray(data3)){
if(data3.prove === undefined){
const err62 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/2/required",keyword:"required",params:{missingProperty: "prove"},message:"must have required property '"+"prove"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[2].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[2],data:data3};
if(vErrors === null){
vErrors = [err62];
}
else {
vErrors.push(err62);
}
errors++;
}
if(data3.title === undefined){
const err63 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/2/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[2].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[2],data:data3};
if(vErrors === null){
vErrors = [err63];
}
else {
vErrors.push(err63);
}
errors++;
}
if(data3.source === undefined){
const err64 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/2/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[2].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[2],data:data3};
if(vErrors === null){
vErrors = [err64];
}
else {
vErrors.push(err64);
}
errors++;
}
if(data3.task === undefined){
const err65 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/2/required",keyword:"required",params:{missingProperty: "task"},message:"must have required property '"+"task"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[2].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[2],data:data3};
if(vErrors === null){
vErrors = [err65];
}
else {
vErrors.push(err65);
}
errors++;
}
for(const key6 in data3){
if(!((((((((key6 === "prove") || (key6 === "title")) || (key6 === "from")) || (key6 === "until")) || (key6 === "source")) || (key6 === "task")) || (key6 === "equals")) || (key6 === "at-least-as-strict-as"))){
const err66 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/2/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key6},message:"must NOT have additional properties",schema:false,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[2],data:data3};
if(vErrors === null){
vErrors = [err66];
}
else {
vErrors.push(err66);
}
errors++;
}
}
if(data3.prove !== undefined){
let data22 = data3.prove;
if("interval" !== data22){
const err67 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/prove",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/2/properties/prove/const",keyword:"const",params:{allowedValue: "interval"},message:"must be equal to constant",schema:"interval",parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[2].properties.prove,data:data22};
if(vErrors === null){
vErrors = [err67];
}
else {
vErrors.push(err67);
}
errors++;
}
}
if(data3.title !== undefined){
let data23 = data3.title;
if(typeof data23 === "string"){
if(func2(data23) > 120){
const err68 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data23};
if(vErrors === null){
vErrors = [err68];
}
else {
vErrors.push(err68);
}
errors++;
}
if(func2(data23) < 1){
const err69 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data23};
if(vErrors === null){
vErrors = [err69];
}
else {
vErrors.push(err69);
}
errors++;
}
}
else {
const err70 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data23};
if(vErrors === null){
vErrors = [err70];
}
else {
vErrors.push(err70);
}
errors++;
}
}
if(data3.from !== undefined){
let data24 = data3.from;
if(typeof data24 === "string"){
if(!pattern18.test(data24)){
const err71 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data24};
if(vErrors === null){
vErrors = [err71];
}
else {
vErrors.push(err71);
}
errors++;
}
}
else {
const err72 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data24};
if(vErrors === null){
vErrors = [err72];
}
else {
vErrors.push(err72);
}
errors++;
}
}
if(data3.until !== undefined){
let data25 = data3.until;
if(typeof data25 === "string"){
if(!pattern18.test(data25)){
const err73 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data25};
if(vErrors === null){
vErrors = [err73];
}
else {
vErrors.push(err73);
}
errors++;
}
}
else {
const err74 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data25};
if(vErrors === null){
vErrors = [err74];
}
else {
vErrors.push(err74);
}
errors++;
}
}
if(data3.source !== undefined){
if(!(validate67(data3.source, {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/source",parentData:data3,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate67.errors : vErrors.concat(validate67.errors);
errors = vErrors.length;
}
}
if(data3.task !== undefined){
let data27 = data3.task;
if(typeof data27 === "string"){
if(func2(data27) > 80){
const err75 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/task",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data27};
if(vErrors === null){
vErrors = [err75];
}
else {
vErrors.push(err75);
}
errors++;
}
if(!pattern4.test(data27)){
const err76 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/task",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data27};
if(vErrors === null){
vErrors = [err76];
}
else {
vErrors.push(err76);
}
errors++;
}
}
else {
const err77 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/task",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data27};
if(vErrors === null){
vErrors = [err77];
}
else {
vErrors.push(err77);
}
errors++;
}
}
if(data3.equals !== undefined){
let data28 = data3.equals;
if(typeof data28 === "string"){
if(func2(data28) > 60){
const err78 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/equals",schemaPath:"defs.json#/$defs/interval/maxLength",keyword:"maxLength",params:{limit: 60},message:"must NOT have more than 60 characters",schema:60,parentSchema:schema113,data:data28};
if(vErrors === null){
vErrors = [err78];
}
else {
vErrors.push(err78);
}
errors++;
}
if(func2(data28) < 1){
const err79 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/equals",schemaPath:"defs.json#/$defs/interval/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema113,data:data28};
if(vErrors === null){
vErrors = [err79];
}
else {
vErrors.push(err79);
}
errors++;
}
}
else {
const err80 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/equals",schemaPath:"defs.json#/$defs/interval/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema113.type,parentSchema:schema113,data:data28};
if(vErrors === null){
vErrors = [err80];
}
else {
vErrors.push(err80);
}
errors++;
}
}
if(data3["at-least-as-strict-as"] !== undefined){
let data29 = data3["at-least-as-strict-as"];
if(typeof data29 === "string"){
if(func2(data29) > 60){
const err81 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/at-least-as-strict-as",schemaPath:"defs.json#/$defs/interval/maxLength",keyword:"maxLength",params:{limit: 60},message:"must NOT have more than 60 characters",schema:60,parentSchema:schema113,data:data29};
if(vErrors === null){
vErrors = [err81];
}
else {
vErrors.push(err81);
}
errors++;
}
if(func2(data29) < 1){
const err82 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/at-least-as-strict-as",schemaPath:"defs.json#/$defs/interval/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema113,data:data29};
if(vErrors === null){
vErrors = [err82];
}
else {
vErrors.push(err82);
}
errors++;
}
}
else {
const err83 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/at-least-as-strict-as",schemaPath:"defs.json#/$defs/interval/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema113.type,parentSchema:schema113,data:data29};
if(vErrors === null){
vErrors = [err83];
}
else {
vErrors.push(err83);
}
errors++;
}
}
}
else {
const err84 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/2/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema135.properties.fixtures.additionalProperties.oneOf[2].type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[2],data:data3};
if(vErrors === null){
vErrors = [err84];
}
else {
vErrors.push(err84);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "situation"){
if(data3 && typeof data3 == "object" && !Array.isArray(data3)){
if(data3.prove === undefined){
const err85 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/3/required",keyword:"required",params:{missingProperty: "prove"},message:"must have required property '"+"prove"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[3].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[3],data:data3};
if(vErrors === null){
vErrors = [err85];
}
else {
vErrors.push(err85);
}
errors++;
}
if(data3.title === undefined){
const err86 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/3/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[3].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[3],data:data3};
if(vErrors === null){
vErrors = [err86];
}
else {
vErrors.push(err86);
}
errors++;
}
if(data3.source === undefined){
const err87 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/3/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[3].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[3],data:data3};
if(vErrors === null){
vErrors = [err87];
}
else {
vErrors.push(err87);
}
errors++;
}
if(data3.decision === undefined){
const err88 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/3/required",keyword:"required",params:{missingProperty: "decision"},message:"must have required property '"+"decision"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[3].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[3],data:data3};
if(vErrors === null){
vErrors = [err88];
}
else {
vErrors.push(err88);
}
errors++;
}
if(data3.given === undefined){
const err89 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/3/required",keyword:"required",params:{missingProperty: "given"},message:"must have required property '"+"given"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[3].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[3],data:data3};
if(vErrors === null){
vErrors = [err89];
}
else {
vErrors.push(err89);
}
errors++;
}
for(const key7 in data3){
if(!(func1.call(schema135.properties.fixtures.additionalProperties.oneOf[3].properties, key7))){
const err90 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/3/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key7},message:"must NOT have additional properties",schema:false,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[3],data:data3};
if(vErrors === null){
vErrors = [err90];
}
else {
vErrors.push(err90);
}
errors++;
}
}
if(data3.prove !== undefined){
let data30 = data3.prove;
if("situation" !== data30){
const err91 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/prove",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/3/properties/prove/const",keyword:"const",params:{allowedValue: "situation"},message:"must be equal to constant",schema:"situation",parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[3].properties.prove,data:data30};
if(vErrors === null){
vErrors = [err91];
}
else {
vErrors.push(err91);
}
errors++;
}
}
if(data3.title !== undefined){
let data31 = data3.title;
if(typeof data31 === "string"){
if(func2(data31) > 120){
const err92 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data31};
if(vErrors === null){
vErrors = [err92];
}
else {
vErrors.push(err92);
}
errors++;
}
if(func2(data31) < 1){
const err93 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data31};
if(vErrors === null){
vErrors = [err93];
}
else {
vErrors.push(err93);
}
errors++;
}
}
else {
const err94 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data31};
if(vErrors === null){
vErrors = [err94];
}
else {
vErrors.push(err94);
}
errors++;
}
}
if(data3.from !== undefined){
let data32 = data3.from;
if(typeof data32 === "string"){
if(!pattern18.test(data32)){
const err95 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data32};
if(vErrors === null){
vErrors = [err95];
}
else {
vErrors.push(err95);
}
errors++;
}
}
else {
const err96 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data32};
if(vErrors === null){
vErrors = [err96];
}
else {
vErrors.push(err96);
}
errors++;
}
}
if(data3.until !== undefined){
let data33 = data3.until;
if(typeof data33 === "string"){
if(!pattern18.test(data33)){
const err97 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data33};
if(vErrors === null){
vErrors = [err97];
}
else {
vErrors.push(err97);
}
errors++;
}
}
else {
const err98 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data33};
if(vErrors === null){
vErrors = [err98];
}
else {
vErrors.push(err98);
}
errors++;
}
}
if(data3.source !== undefined){
if(!(validate67(data3.source, {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/source",parentData:data3,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate67.errors : vErrors.concat(validate67.errors);
errors = vErrors.length;
}
}
if(data3.decision !== undefined){
let data35 = data3.decision;
if(typeof data35 === "string"){
if(func2(data35) > 80){
const err99 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/decision",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data35};
if(vErrors === null){
vErrors = [err99];
}
else {
vErrors.push(err99);
}
errors++;
}
if(!pattern4.test(data35)){
const err100 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/decision",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data35};
if(vErrors === null){
vErrors = [err100];
}
else {
vErrors.push(err100);
}
errors++;
}
}
else {
const err101 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/decision",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data35};
if(vErrors === null){
vErrors = [err101];
}
else {
vErrors.push(err101);
}
errors++;
}
}
if(data3.given !== undefined){
if(!(validate72(data3.given, {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/given",parentData:data3,parentDataProperty:"given",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate72.errors : vErrors.concat(validate72.errors);
errors = vErrors.length;
}
}
if(data3.outcome !== undefined){
let data37 = data3.outcome;
if(typeof data37 === "string"){
if(func2(data37) > 80){
const err102 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/outcome",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data37};
if(vErrors === null){
vErrors = [err102];
}
else {
vErrors.push(err102);
}
errors++;
}
if(!pattern4.test(data37)){
const err103 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/outcome",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data37};
if(vErrors === null){
vErrors = [err103];
}
else {
vErrors.push(err103);
}
errors++;
}
}
else {
const err104 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/outcome",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data37};
if(vErrors === null){
vErrors = [err104];
}
else {
vErrors.push(err104);
}
errors++;
}
}
if(data3["at-least"] !== undefined){
let data38 = data3["at-least"];
if(typeof data38 === "string"){
if(func2(data38) > 80){
const err105 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/at-least",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data38};
if(vErrors === null){
vErrors = [err105];
}
else {
vErrors.push(err105);
}
errors++;
}
if(!pattern4.test(data38)){
const err106 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/at-least",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data38};
if(vErrors === null){
vErrors = [err106];
}
else {
vErrors.push(err106);
}
errors++;
}
}
else {
const err107 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/at-least",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data38};
if(vErrors === null){
vErrors = [err107];
}
else {
vErrors.push(err107);
}
errors++;
}
}
if(data3.not !== undefined){
let data39 = data3.not;
if(typeof data39 === "string"){
if(func2(data39) > 80){
const err108 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/not",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data39};
if(vErrors === null){
vErrors = [err108];
}
else {
vErrors.push(err108);
}
errors++;
}
if(!pattern4.test(data39)){
const err109 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/not",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data39};
if(vErrors === null){
vErrors = [err109];
}
else {
vErrors.push(err109);
}
errors++;
}
}
else {
const err110 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/not",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data39};
if(vErrors === null){
vErrors = [err110];
}
else {
vErrors.push(err110);
}
errors++;
}
}
}
else {
const err111 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/3/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema135.properties.fixtures.additionalProperties.oneOf[3].type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[3],data:data3};
if(vErrors === null){
vErrors = [err111];
}
else {
vErrors.push(err111);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "boundary"){
if(data3 && typeof data3 == "object" && !Array.isArray(data3)){
if(data3.prove === undefined){
const err112 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/4/required",keyword:"required",params:{missingProperty: "prove"},message:"must have required property '"+"prove"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[4].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[4],data:data3};
if(vErrors === null){
vErrors = [err112];
}
else {
vErrors.push(err112);
}
errors++;
}
if(data3.title === undefined){
const err113 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/4/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[4].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[4],data:data3};
if(vErrors === null){
vErrors = [err113];
}
else {
vErrors.push(err113);
}
errors++;
}
if(data3.source === undefined){
const err114 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/4/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[4].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[4],data:data3};
if(vErrors === null){
vErrors = [err114];
}
else {
vErrors.push(err114);
}
errors++;
}
if(data3.decision === undefined){
const err115 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/4/required",keyword:"required",params:{missingProperty: "decision"},message:"must have required property '"+"decision"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[4].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[4],data:data3};
if(vErrors === null){
vErrors = [err115];
}
else {
vErrors.push(err115);
}
errors++;
}
if(data3.fact === undefined){
const err116 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/4/required",keyword:"required",params:{missingProperty: "fact"},message:"must have required property '"+"fact"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[4].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[4],data:data3};
if(vErrors === null){
vErrors = [err116];
}
else {
vErrors.push(err116);
}
errors++;
}
if(data3.threshold === undefined){
const err117 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/4/required",keyword:"required",params:{missingProperty: "threshold"},message:"must have required property '"+"threshold"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[4].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[4],data:data3};
if(vErrors === null){
vErrors = [err117];
}
else {
vErrors.push(err117);
}
errors++;
}
for(const key8 in data3){
if(!(func1.call(schema135.properties.fixtures.additionalProperties.oneOf[4].properties, key8))){
const err118 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/4/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key8},message:"must NOT have additional properties",schema:false,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[4],data:data3};
if(vErrors === null){
vErrors = [err118];
}
else {
vErrors.push(err118);
}
errors++;
}
}
if(data3.prove !== undefined){
let data40 = data3.prove;
if("boundary" !== data40){
const err119 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/prove",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/4/properties/prove/const",keyword:"const",params:{allowedValue: "boundary"},message:"must be equal to constant",schema:"boundary",parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[4].properties.prove,data:data40};
if(vErrors === null){
vErrors = [err119];
}
else {
vErrors.push(err119);
}
errors++;
}
}
if(data3.title !== undefined){
let data41 = data3.title;
if(typeof data41 === "string"){
if(func2(data41) > 120){
const err120 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data41};
if(vErrors === null){
vErrors = [err120];
}
else {
vErrors.push(err120);
}
errors++;
}
if(func2(data41) < 1){
const err121 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data41};
if(vErrors === null){
vErrors = [err121];
}
else {
vErrors.push(err121);
}
errors++;
}
}
else {
const err122 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data41};
if(vErrors === null){
vErrors = [err122];
}
else {
vErrors.push(err122);
}
errors++;
}
}
if(data3.from !== undefined){
let data42 = data3.from;
if(typeof data42 === "string"){
if(!pattern18.test(data42)){
const err123 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data42};
if(vErrors === null){
vErrors = [err123];
}
else {
vErrors.push(err123);
}
errors++;
}
}
else {
const err124 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data42};
if(vErrors === null){
vErrors = [err124];
}
else {
vErrors.push(err124);
}
errors++;
}
}
if(data3.until !== undefined){
let data43 = data3.until;
if(typeof data43 === "string"){
if(!pattern18.test(data43)){
const err125 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data43};
if(vErrors === null){
vErrors = [err125];
}
else {
vErrors.push(err125);
}
errors++;
}
}
else {
const err126 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data43};
if(vErrors === null){
vErrors = [err126];
}
else {
vErrors.push(err126);
}
errors++;
}
}
if(data3.source !== undefined){
if(!(validate67(data3.source, {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/source",parentData:data3,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate67.errors : vErrors.concat(validate67.errors);
errors = vErrors.length;
}
}
if(data3.decision !== undefined){
let data45 = data3.decision;
if(typeof data45 === "string"){
if(func2(data45) > 80){
const err127 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/decision",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data45};
if(vErrors === null){
vErrors = [err127];
}
else {
vErrors.push(err127);
}
errors++;
}
if(!pattern4.test(data45)){
const err128 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/decision",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data45};
if(vErrors === null){
vErrors = [err128];
}
else {
vErrors.push(err128);
}
errors++;
}
}
else {
const err129 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/decision",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data45};
if(vErrors === null){
vErrors = [err129];
}
else {
vErrors.push(err129);
}
errors++;
}
}
if(data3.fact !== undefined){
let data46 = data3.fact;
if(typeof data46 === "string"){
if(func2(data46) > 80){
const err130 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/fact",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data46};
if(vErrors === null){
vErrors = [err130];
}
else {
vErrors.push(err130);
}
errors++;
}
if(!pattern4.test(data46)){
const err131 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/fact",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data46};
if(vErrors === null){
vErrors = [err131];
}
else {
vErrors.push(err131);
}
errors++;
}
}
else {
const err132 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/fact",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data46};
if(vErrors === null){
vErrors = [err132];
}
else {
vErrors.push(err132);
}
errors++;
}
}
if(data3.threshold !== undefined){
let data47 = data3.threshold;
if((typeof data47 !== "string") && (!((typeof data47 == "number") && (isFinite(data47))))){
const err133 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/threshold",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/4/properties/threshold/type",keyword:"type",params:{type: schema135.properties.fixtures.additionalProperties.oneOf[4].properties.threshold.type},message:"must be string,number",schema:schema135.properties.fixtures.additionalProperties.oneOf[4].properties.threshold.type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[4].properties.threshold,data:data47};
if(vErrors === null){
vErrors = [err133];
}
else {
vErrors.push(err133);
}
errors++;
}
}
if(data3.given !== undefined){
if(!(validate72(data3.given, {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/given",parentData:data3,parentDataProperty:"given",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate72.errors : vErrors.concat(validate72.errors);
errors = vErrors.length;
}
}
if(data3.program !== undefined){
if(!(validate72(data3.program, {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/program",parentData:data3,parentDataProperty:"program",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate72.errors : vErrors.concat(validate72.errors);
errors = vErrors.length;
}
}
if(data3.below !== undefined){
let data50 = data3.below;
if(typeof data50 === "string"){
if(func2(data50) > 80){
const err134 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/below",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data50};
if(vErrors === null){
vErrors = [err134];
}
else {
vErrors.push(err134);
}
errors++;
}
if(!pattern4.test(data50)){
const err135 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/below",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data50};
if(vErrors === null){
vErrors = [err135];
}
else {
vErrors.push(err135);
}
errors++;
}
}
else {
const err136 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/below",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data50};
if(vErrors === null){
vErrors = [err136];
}
else {
vErrors.push(err136);
}
errors++;
}
}
if(data3.at !== undefined){
let data51 = data3.at;
if(typeof data51 === "string"){
if(func2(data51) > 80){
const err137 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/at",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data51};
if(vErrors === null){
vErrors = [err137];
}
else {
vErrors.push(err137);
}
errors++;
}
if(!pattern4.test(data51)){
const err138 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/at",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data51};
if(vErrors === null){
vErrors = [err138];
}
else {
vErrors.push(err138);
}
errors++;
}
}
else {
const err139 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/at",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data51};
if(vErrors === null){
vErrors = [err139];
}
else {
vErrors.push(err139);
}
errors++;
}
}
if(data3.above !== undefined){
let data52 = data3.above;
if(typeof data52 === "string"){
if(func2(data52) > 80){
const err140 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/above",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data52};
if(vErrors === null){
vErrors = [err140];
}
else {
vErrors.push(err140);
}
errors++;
}
if(!pattern4.test(data52)){
const err141 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/above",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data52};
if(vErrors === null){
vErrors = [err141];
}
else {
vErrors.push(err141);
}
errors++;
}
}
else {
const err142 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/above",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data52};
if(vErrors === null){
vErrors = [err142];
}
else {
vErrors.push(err142);
}
errors++;
}
}
}
else {
const err143 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/4/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema135.properties.fixtures.additionalProperties.oneOf[4].type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[4],data:data3};
if(vErrors === null){
vErrors = [err143];
}
else {
vErrors.push(err143);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "program"){
if(data3 && typeof data3 == "object" && !Array.isArray(data3)){
if(data3.prove === undefined){
const err144 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/5/required",keyword:"required",params:{missingProperty: "prove"},message:"must have required property '"+"prove"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[5].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[5],data:data3};
if(vErrors === null){
vErrors = [err144];
}
else {
vErrors.push(err144);
}
errors++;
}
if(data3.title === undefined){
const err145 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/5/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[5].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[5],data:data3};
if(vErrors === null){
vErrors = [err145];
}
else {
vErrors.push(err145);
}
errors++;
}
if(data3.source === undefined){
const err146 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/5/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[5].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[5],data:data3};
if(vErrors === null){
vErrors = [err146];
}
else {
vErrors.push(err146);
}
errors++;
}
if(data3.decision === undefined){
const err147 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/5/required",keyword:"required",params:{missingProperty: "decision"},message:"must have required property '"+"decision"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[5].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[5],data:data3};
if(vErrors === null){
vErrors = [err147];
}
else {
vErrors.push(err147);
}
errors++;
}
if(data3.given === undefined){
const err148 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/5/required",keyword:"required",params:{missingProperty: "given"},message:"must have required property '"+"given"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[5].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[5],data:data3};
if(vErrors === null){
vErrors = [err148];
}
else {
vErrors.push(err148);
}
errors++;
}
if(data3.program === undefined){
const err149 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/5/required",keyword:"required",params:{missingProperty: "program"},message:"must have required property '"+"program"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[5].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[5],data:data3};
if(vErrors === null){
vErrors = [err149];
}
else {
vErrors.push(err149);
}
errors++;
}
if(data3.fits === undefined){
const err150 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/5/required",keyword:"required",params:{missingProperty: "fits"},message:"must have required property '"+"fits"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[5].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[5],data:data3};
if(vErrors === null){
vErrors = [err150];
}
else {
vErrors.push(err150);
}
errors++;
}
for(const key9 in data3){
if(!(func1.call(schema135.properties.fixtures.additionalProperties.oneOf[5].properties, key9))){
const err151 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/5/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key9},message:"must NOT have additional properties",schema:false,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[5],data:data3};
if(vErrors === null){
vErrors = [err151];
}
else {
vErrors.push(err151);
}
errors++;
}
}
if(data3.prove !== undefined){
let data53 = data3.prove;
if("program" !== data53){
const err152 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/prove",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/5/properties/prove/const",keyword:"const",params:{allowedValue: "program"},message:"must be equal to constant",schema:"program",parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[5].properties.prove,data:data53};
if(vErrors === null){
vErrors = [err152];
}
else {
vErrors.push(err152);
}
errors++;
}
}
if(data3.title !== undefined){
let data54 = data3.title;
if(typeof data54 === "string"){
if(func2(data54) > 120){
const err153 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data54};
if(vErrors === null){
vErrors = [err153];
}
else {
vErrors.push(err153);
}
errors++;
}
if(func2(data54) < 1){
const err154 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data54};
if(vErrors === null){
vErrors = [err154];
}
else {
vErrors.push(err154);
}
errors++;
}
}
else {
const err155 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data54};
if(vErrors === null){
vErrors = [err155];
}
else {
vErrors.push(err155);
}
errors++;
}
}
if(data3.from !== undefined){
let data55 = data3.from;
if(typeof data55 === "string"){
if(!pattern18.test(data55)){
const err156 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data55};
if(vErrors === null){
vErrors = [err156];
}
else {
vErrors.push(err156);
}
errors++;
}
}
else {
const err157 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data55};
if(vErrors === null){
vErrors = [err157];
}
else {
vErrors.push(err157);
}
errors++;
}
}
if(data3.until !== undefined){
let data56 = data3.until;
if(typeof data56 === "string"){
if(!pattern18.test(data56)){
const err158 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data56};
if(vErrors === null){
vErrors = [err158];
}
else {
vErrors.push(err158);
}
errors++;
}
}
else {
const err159 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data56};
if(vErrors === null){
vErrors = [err159];
}
else {
vErrors.push(err159);
}
errors++;
}
}
if(data3.source !== undefined){
if(!(validate67(data3.source, {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/source",parentData:data3,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate67.errors : vErrors.concat(validate67.errors);
errors = vErrors.length;
}
}
if(data3.decision !== undefined){
let data58 = data3.decision;
if(typeof data58 === "string"){
if(func2(data58) > 80){
const err160 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/decision",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data58};
if(vErrors === null){
vErrors = [err160];
}
else {
vErrors.push(err160);
}
errors++;
}
if(!pattern4.test(data58)){
const err161 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/decision",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data58};
if(vErrors === null){
vErrors = [err161];
}
else {
vErrors.push(err161);
}
errors++;
}
}
else {
const err162 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/decision",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data58};
if(vErrors === null){
vErrors = [err162];
}
else {
vErrors.push(err162);
}
errors++;
}
}
if(data3.given !== undefined){
if(!(validate72(data3.given, {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/given",parentData:data3,parentDataProperty:"given",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate72.errors : vErrors.concat(validate72.errors);
errors = vErrors.length;
}
}
if(data3.program !== undefined){
if(!(validate72(data3.program, {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/program",parentData:data3,parentDataProperty:"program",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate72.errors : vErrors.concat(validate72.errors);
errors = vErrors.length;
}
}
if(data3.fits !== undefined){
let data61 = data3.fits;
if(typeof data61 !== "boolean"){
const err163 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/fits",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/5/properties/fits/type",keyword:"type",params:{type: "boolean"},message:"must be boolean",schema:schema135.properties.fixtures.additionalProperties.oneOf[5].properties.fits.type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[5].properties.fits,data:data61};
if(vErrors === null){
vErrors = [err163];
}
else {
vErrors.push(err163);
}
errors++;
}
}
}
else {
const err164 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/5/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema135.properties.fixtures.additionalProperties.oneOf[5].type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[5],data:data3};
if(vErrors === null){
vErrors = [err164];
}
else {
vErrors.push(err164);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "disagreement"){
if(data3 && typeof data3 == "object" && !Array.isArray(data3)){
if(data3.prove === undefined){
const err165 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/required",keyword:"required",params:{missingProperty: "prove"},message:"must have required property '"+"prove"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[6].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6],data:data3};
if(vErrors === null){
vErrors = [err165];
}
else {
vErrors.push(err165);
}
errors++;
}
if(data3.title === undefined){
const err166 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[6].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6],data:data3};
if(vErrors === null){
vErrors = [err166];
}
else {
vErrors.push(err166);
}
errors++;
}
if(data3.because === undefined){
const err167 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[6].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6],data:data3};
if(vErrors === null){
vErrors = [err167];
}
else {
vErrors.push(err167);
}
errors++;
}
if(data3.positions === undefined){
const err168 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/required",keyword:"required",params:{missingProperty: "positions"},message:"must have required property '"+"positions"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[6].required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6],data:data3};
if(vErrors === null){
vErrors = [err168];
}
else {
vErrors.push(err168);
}
errors++;
}
for(const key10 in data3){
if(!(((((((key10 === "prove") || (key10 === "title")) || (key10 === "from")) || (key10 === "until")) || (key10 === "about")) || (key10 === "because")) || (key10 === "positions"))){
const err169 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key10},message:"must NOT have additional properties",schema:false,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6],data:data3};
if(vErrors === null){
vErrors = [err169];
}
else {
vErrors.push(err169);
}
errors++;
}
}
if(data3.prove !== undefined){
let data62 = data3.prove;
if("disagreement" !== data62){
const err170 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/prove",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/properties/prove/const",keyword:"const",params:{allowedValue: "disagreement"},message:"must be equal to constant",schema:"disagreement",parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.prove,data:data62};
if(vErrors === null){
vErrors = [err170];
}
else {
vErrors.push(err170);
}
errors++;
}
}
if(data3.title !== undefined){
let data63 = data3.title;
if(typeof data63 === "string"){
if(func2(data63) > 120){
const err171 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data63};
if(vErrors === null){
vErrors = [err171];
}
else {
vErrors.push(err171);
}
errors++;
}
if(func2(data63) < 1){
const err172 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data63};
if(vErrors === null){
vErrors = [err172];
}
else {
vErrors.push(err172);
}
errors++;
}
}
else {
const err173 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data63};
if(vErrors === null){
vErrors = [err173];
}
else {
vErrors.push(err173);
}
errors++;
}
}
if(data3.from !== undefined){
let data64 = data3.from;
if(typeof data64 === "string"){
if(!pattern18.test(data64)){
const err174 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data64};
if(vErrors === null){
vErrors = [err174];
}
else {
vErrors.push(err174);
}
errors++;
}
}
else {
const err175 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/from",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data64};
if(vErrors === null){
vErrors = [err175];
}
else {
vErrors.push(err175);
}
errors++;
}
}
if(data3.until !== undefined){
let data65 = data3.until;
if(typeof data65 === "string"){
if(!pattern18.test(data65)){
const err176 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data65};
if(vErrors === null){
vErrors = [err176];
}
else {
vErrors.push(err176);
}
errors++;
}
}
else {
const err177 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/until",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data65};
if(vErrors === null){
vErrors = [err177];
}
else {
vErrors.push(err177);
}
errors++;
}
}
if(data3.about !== undefined){
let data66 = data3.about;
if(typeof data66 === "string"){
if(func2(data66) > 80){
const err178 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/about",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data66};
if(vErrors === null){
vErrors = [err178];
}
else {
vErrors.push(err178);
}
errors++;
}
if(!pattern4.test(data66)){
const err179 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/about",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data66};
if(vErrors === null){
vErrors = [err179];
}
else {
vErrors.push(err179);
}
errors++;
}
}
else {
const err180 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/about",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data66};
if(vErrors === null){
vErrors = [err180];
}
else {
vErrors.push(err180);
}
errors++;
}
}
if(data3.because !== undefined){
let data67 = data3.because;
if(typeof data67 === "string"){
if(func2(data67) > 2000){
const err181 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data67};
if(vErrors === null){
vErrors = [err181];
}
else {
vErrors.push(err181);
}
errors++;
}
if(func2(data67) < 1){
const err182 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data67};
if(vErrors === null){
vErrors = [err182];
}
else {
vErrors.push(err182);
}
errors++;
}
}
else {
const err183 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data67};
if(vErrors === null){
vErrors = [err183];
}
else {
vErrors.push(err183);
}
errors++;
}
}
if(data3.positions !== undefined){
let data68 = data3.positions;
if(Array.isArray(data68)){
if(data68.length < 2){
const err184 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/properties/positions/minItems",keyword:"minItems",params:{limit: 2},message:"must NOT have fewer than 2 items",schema:2,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions,data:data68};
if(vErrors === null){
vErrors = [err184];
}
else {
vErrors.push(err184);
}
errors++;
}
const len0 = data68.length;
for(let i0=0; i0<len0; i0++){
let data69 = data68[i0];
if(data69 && typeof data69 == "object" && !Array.isArray(data69)){
if(data69.says === undefined){
const err185 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions/" + i0,schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/properties/positions/items/required",keyword:"required",params:{missingProperty: "says"},message:"must have required property '"+"says"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items.required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items,data:data69};
if(vErrors === null){
vErrors = [err185];
}
else {
vErrors.push(err185);
}
errors++;
}
if(data69.source === undefined){
const err186 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions/" + i0,schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/properties/positions/items/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items.required,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items,data:data69};
if(vErrors === null){
vErrors = [err186];
}
else {
vErrors.push(err186);
}
errors++;
}
for(const key11 in data69){
if(!((((key11 === "region") || (key11 === "says")) || (key11 === "value")) || (key11 === "source"))){
const err187 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions/" + i0,schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/properties/positions/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key11},message:"must NOT have additional properties",schema:false,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items,data:data69};
if(vErrors === null){
vErrors = [err187];
}
else {
vErrors.push(err187);
}
errors++;
}
}
if(data69.region !== undefined){
let data70 = data69.region;
if(typeof data70 === "string"){
if(!pattern16.test(data70)){
const err188 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions/" + i0+"/region",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/properties/positions/items/properties/region/pattern",keyword:"pattern",params:{pattern: "^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$"},message:"must match pattern \""+"^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$"+"\"",schema:"^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$",parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items.properties.region,data:data70};
if(vErrors === null){
vErrors = [err188];
}
else {
vErrors.push(err188);
}
errors++;
}
}
else {
const err189 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions/" + i0+"/region",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/properties/positions/items/properties/region/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items.properties.region.type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items.properties.region,data:data70};
if(vErrors === null){
vErrors = [err189];
}
else {
vErrors.push(err189);
}
errors++;
}
}
if(data69.says !== undefined){
let data71 = data69.says;
if(typeof data71 === "string"){
if(func2(data71) > 2000){
const err190 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions/" + i0+"/says",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data71};
if(vErrors === null){
vErrors = [err190];
}
else {
vErrors.push(err190);
}
errors++;
}
if(func2(data71) < 1){
const err191 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions/" + i0+"/says",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data71};
if(vErrors === null){
vErrors = [err191];
}
else {
vErrors.push(err191);
}
errors++;
}
}
else {
const err192 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions/" + i0+"/says",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data71};
if(vErrors === null){
vErrors = [err192];
}
else {
vErrors.push(err192);
}
errors++;
}
}
if(data69.value !== undefined){
let data72 = data69.value;
if(typeof data72 === "string"){
if(func2(data72) < 1){
const err193 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions/" + i0+"/value",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/properties/positions/items/properties/value/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items.properties.value,data:data72};
if(vErrors === null){
vErrors = [err193];
}
else {
vErrors.push(err193);
}
errors++;
}
}
else {
const err194 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions/" + i0+"/value",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/properties/positions/items/properties/value/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items.properties.value.type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items.properties.value,data:data72};
if(vErrors === null){
vErrors = [err194];
}
else {
vErrors.push(err194);
}
errors++;
}
}
if(data69.source !== undefined){
if(!(validate67(data69.source, {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions/" + i0+"/source",parentData:data69,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate67.errors : vErrors.concat(validate67.errors);
errors = vErrors.length;
}
}
}
else {
const err195 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions/" + i0,schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/properties/positions/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items.type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.items,data:data69};
if(vErrors === null){
vErrors = [err195];
}
else {
vErrors.push(err195);
}
errors++;
}
}
}
else {
const err196 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/positions",schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/properties/positions/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions.type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6].properties.positions,data:data68};
if(vErrors === null){
vErrors = [err196];
}
else {
vErrors.push(err196);
}
errors++;
}
}
}
else {
const err197 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/oneOf/6/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema135.properties.fixtures.additionalProperties.oneOf[6].type,parentSchema:schema135.properties.fixtures.additionalProperties.oneOf[6],data:data3};
if(vErrors === null){
vErrors = [err197];
}
else {
vErrors.push(err197);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else {
const err198 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/discriminator",keyword:"discriminator",params:{error: "mapping", tag: "prove", tagValue: tag0},message:"value of tag \"prove\" must be in oneOf",schema:schema135.properties.fixtures.additionalProperties.discriminator,parentSchema:schema135.properties.fixtures.additionalProperties,data:data3};
if(vErrors === null){
vErrors = [err198];
}
else {
vErrors.push(err198);
}
errors++;
}
}
else {
const err199 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/discriminator",keyword:"discriminator",params:{error: "tag", tag: "prove", tagValue: tag0},message:"tag \"prove\" must be string",schema:schema135.properties.fixtures.additionalProperties.discriminator,parentSchema:schema135.properties.fixtures.additionalProperties,data:data3};
if(vErrors === null){
vErrors = [err199];
}
else {
vErrors.push(err199);
}
errors++;
}
}
else {
const err200 = {instancePath:instancePath+"/fixtures/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/fixtures/additionalProperties/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema135.properties.fixtures.additionalProperties.type,parentSchema:schema135.properties.fixtures.additionalProperties,data:data3};
if(vErrors === null){
vErrors = [err200];
}
else {
vErrors.push(err200);
}
errors++;
}
}
}
else {
const err201 = {instancePath:instancePath+"/fixtures",schemaPath:"#/properties/fixtures/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema135.properties.fixtures.type,parentSchema:schema135.properties.fixtures,data:data2};
if(vErrors === null){
vErrors = [err201];
}
else {
vErrors.push(err201);
}
errors++;
}
}
}
else {
const err202 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema135.type,parentSchema:schema135,data};
if(vErrors === null){
vErrors = [err202];
}
else {
vErrors.push(err202);
}
errors++;
}
validate66.errors = vErrors;
return errors === 0;
}
validate66.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_form = validate81;
const schema186 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"form.json","title":"Form","description":"A log sheet.","type":"object","additionalProperties":false,"required":["kind","id","title","purpose","columns","rows","layout","covers","signed-by","keep"],"properties":{"kind":{"const":"form","description":"The kind of document; it picks this schema."},"id":{"$ref":"defs.json#/$defs/id"},"title":{"$ref":"defs.json#/$defs/label"},"purpose":{"$ref":"defs.json#/$defs/text","description":"What it shows, and to whom."},"machine":{"$ref":"defs.json#/$defs/id","description":"Machine kind: one sheet a machine of this kind."},"only-when":{"$ref":"defs.json#/$defs/condition","description":"Printed only for clinics where this holds."},"columns":{"type":"array","items":{"type":"object","additionalProperties":false,"required":["id","label"],"properties":{"id":{"$ref":"defs.json#/$defs/id"},"label":{"$ref":"defs.json#/$defs/label"},"unit":{"type":"string","minLength":1,"description":"Unit of what is written."},"width":{"type":"integer","minimum":1,"maximum":6,"description":"Relative width."},"limit":{"$ref":"defs.json#/$defs/id","description":"Limit printed in the column head."},"only-when":{"$ref":"defs.json#/$defs/condition","description":"Only for machines where this holds."},"numbered":{"type":"boolean","description":"Its lines are numbered 1, 2, 3 … on the blank sheet, such as the days of a month."}}},"minItems":2},"rows":{"type":"integer","minimum":3,"maximum":40,"description":"Empty lines a sheet."},"sheet-rows":{"type":"integer","minimum":3,"maximum":40,"description":"Empty lines of a sheet on a page of its own, where they are more than in the manual."},"period":{"enum":["week","month","sheet"],"description":"What the head of a sheet asks for: the week, the month, or from when to when (default sheet)."},"layout":{"enum":["portrait","landscape"]},"covers":{"$ref":"defs.json#/$defs/text","description":"What one sheet covers: a week of one machine."},"signed-by":{"$ref":"defs.json#/$defs/id","description":"Role."},"signed-when":{"$ref":"defs.json#/$defs/text","description":"When it is signed."},"keep":{"$ref":"defs.json#/$defs/id","description":"Limit that says how long it is kept."},"note":{"$ref":"defs.json#/$defs/text","description":"What to write when something is wrong."},"sample":{"type":"array","minItems":3,"maxItems":20,"items":{"type":"object","additionalProperties":false,"required":["cells"],"properties":{"cells":{"type":"object","minProperties":1,"propertyNames":{"$ref":"defs.json#/$defs/id"},"additionalProperties":{"type":"string","maxLength":300},"description":"What is written, by column. Days are written YYYY-MM-DD and times HH:MM; they are printed as the region writes them."},"fault":{"type":"boolean","description":"The line on which something went wrong: its readings may lie outside their limits."}}},"description":"Lines of a filled example: invented, never a record."}}};

function validate82(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate82.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(Object.keys(data).length < 1){
const err0 = {instancePath,schemaPath:"#/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
for(const key0 in data){
if(!(((key0 === "all") || (key0 === "any")) || (key0 === "not"))){
if(!(validate23(data[key0], {instancePath:instancePath+"/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"),parentData:data,parentDataProperty:key0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate23.errors : vErrors.concat(validate23.errors);
errors = vErrors.length;
}
}
}
if(data.all !== undefined){
let data1 = data.all;
if(Array.isArray(data1)){
if(data1.length < 1){
const err1 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
const len0 = data1.length;
for(let i0=0; i0<len0; i0++){
if(!(validate22(data1[i0], {instancePath:instancePath+"/all/" + i0,parentData:data1,parentDataProperty:i0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err2 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.all.type,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.any !== undefined){
let data3 = data.any;
if(Array.isArray(data3)){
if(data3.length < 1){
const err3 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
const len1 = data3.length;
for(let i1=0; i1<len1; i1++){
if(!(validate22(data3[i1], {instancePath:instancePath+"/any/" + i1,parentData:data3,parentDataProperty:i1,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err4 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.any.type,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.not !== undefined){
if(!(validate22(data.not, {instancePath:instancePath+"/not",parentData:data,parentDataProperty:"not",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err5 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema37.type,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
validate82.errors = vErrors;
return errors === 0;
}
validate82.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate81(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="form.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate81.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema186.required,parentSchema:schema186,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.id === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema186.required,parentSchema:schema186,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data.title === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema186.required,parentSchema:schema186,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
if(data.purpose === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "purpose"},message:"must have required property '"+"purpose"+"'",schema:schema186.required,parentSchema:schema186,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(data.columns === undefined){
const err4 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "columns"},message:"must have required property '"+"columns"+"'",schema:schema186.required,parentSchema:schema186,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(data.rows === undefined){
const err5 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "rows"},message:"must have required property '"+"rows"+"'",schema:schema186.required,parentSchema:schema186,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(data.layout === undefined){
const err6 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "layout"},message:"must have required property '"+"layout"+"'",schema:schema186.required,parentSchema:schema186,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
if(data.covers === undefined){
const err7 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "covers"},message:"must have required property '"+"covers"+"'",schema:schema186.required,parentSchema:schema186,data};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
if(data["signed-by"] === undefined){
const err8 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "signed-by"},message:"must have required property '"+"signed-by"+"'",schema:schema186.required,parentSchema:schema186,data};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(data.keep === undefined){
const err9 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "keep"},message:"must have required property '"+"keep"+"'",schema:schema186.required,parentSchema:schema186,data};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
for(const key0 in data){
if(!(func1.call(schema186.properties, key0))){
const err10 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema186,data};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("form" !== data0){
const err11 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "form"},message:"must be equal to constant",schema:"form",parentSchema:schema186.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.id !== undefined){
let data1 = data.id;
if(typeof data1 === "string"){
if(func2(data1) > 80){
const err12 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(!pattern4.test(data1)){
const err13 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
if(data.title !== undefined){
let data2 = data.title;
if(typeof data2 === "string"){
if(func2(data2) > 120){
const err15 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(func2(data2) < 1){
const err16 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
else {
const err17 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
if(data.purpose !== undefined){
let data3 = data.purpose;
if(typeof data3 === "string"){
if(func2(data3) > 2000){
const err18 = {instancePath:instancePath+"/purpose",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data3};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
if(func2(data3) < 1){
const err19 = {instancePath:instancePath+"/purpose",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data3};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
else {
const err20 = {instancePath:instancePath+"/purpose",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data3};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
if(data.machine !== undefined){
let data4 = data.machine;
if(typeof data4 === "string"){
if(func2(data4) > 80){
const err21 = {instancePath:instancePath+"/machine",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
if(!pattern4.test(data4)){
const err22 = {instancePath:instancePath+"/machine",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
else {
const err23 = {instancePath:instancePath+"/machine",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
if(data["only-when"] !== undefined){
if(!(validate82(data["only-when"], {instancePath:instancePath+"/only-when",parentData:data,parentDataProperty:"only-when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate82.errors : vErrors.concat(validate82.errors);
errors = vErrors.length;
}
}
if(data.columns !== undefined){
let data6 = data.columns;
if(Array.isArray(data6)){
if(data6.length < 2){
const err24 = {instancePath:instancePath+"/columns",schemaPath:"#/properties/columns/minItems",keyword:"minItems",params:{limit: 2},message:"must NOT have fewer than 2 items",schema:2,parentSchema:schema186.properties.columns,data:data6};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
const len0 = data6.length;
for(let i0=0; i0<len0; i0++){
let data7 = data6[i0];
if(data7 && typeof data7 == "object" && !Array.isArray(data7)){
if(data7.id === undefined){
const err25 = {instancePath:instancePath+"/columns/" + i0,schemaPath:"#/properties/columns/items/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema186.properties.columns.items.required,parentSchema:schema186.properties.columns.items,data:data7};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
if(data7.label === undefined){
const err26 = {instancePath:instancePath+"/columns/" + i0,schemaPath:"#/properties/columns/items/required",keyword:"required",params:{missingProperty: "label"},message:"must have required property '"+"label"+"'",schema:schema186.properties.columns.items.required,parentSchema:schema186.properties.columns.items,data:data7};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
for(const key1 in data7){
if(!(((((((key1 === "id") || (key1 === "label")) || (key1 === "unit")) || (key1 === "width")) || (key1 === "limit")) || (key1 === "only-when")) || (key1 === "numbered"))){
const err27 = {instancePath:instancePath+"/columns/" + i0,schemaPath:"#/properties/columns/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key1},message:"must NOT have additional properties",schema:false,parentSchema:schema186.properties.columns.items,data:data7};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
}
if(data7.id !== undefined){
let data8 = data7.id;
if(typeof data8 === "string"){
if(func2(data8) > 80){
const err28 = {instancePath:instancePath+"/columns/" + i0+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data8};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
if(!pattern4.test(data8)){
const err29 = {instancePath:instancePath+"/columns/" + i0+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data8};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
}
else {
const err30 = {instancePath:instancePath+"/columns/" + i0+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data8};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
}
if(data7.label !== undefined){
let data9 = data7.label;
if(typeof data9 === "string"){
if(func2(data9) > 120){
const err31 = {instancePath:instancePath+"/columns/" + i0+"/label",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data9};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
if(func2(data9) < 1){
const err32 = {instancePath:instancePath+"/columns/" + i0+"/label",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data9};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
}
else {
const err33 = {instancePath:instancePath+"/columns/" + i0+"/label",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data9};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
}
if(data7.unit !== undefined){
let data10 = data7.unit;
if(typeof data10 === "string"){
if(func2(data10) < 1){
const err34 = {instancePath:instancePath+"/columns/" + i0+"/unit",schemaPath:"#/properties/columns/items/properties/unit/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema186.properties.columns.items.properties.unit,data:data10};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
}
else {
const err35 = {instancePath:instancePath+"/columns/" + i0+"/unit",schemaPath:"#/properties/columns/items/properties/unit/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema186.properties.columns.items.properties.unit.type,parentSchema:schema186.properties.columns.items.properties.unit,data:data10};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
}
if(data7.width !== undefined){
let data11 = data7.width;
if(!(((typeof data11 == "number") && (!(data11 % 1) && !isNaN(data11))) && (isFinite(data11)))){
const err36 = {instancePath:instancePath+"/columns/" + i0+"/width",schemaPath:"#/properties/columns/items/properties/width/type",keyword:"type",params:{type: "integer"},message:"must be integer",schema:schema186.properties.columns.items.properties.width.type,parentSchema:schema186.properties.columns.items.properties.width,data:data11};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
}
if((typeof data11 == "number") && (isFinite(data11))){
if(data11 > 6 || isNaN(data11)){
const err37 = {instancePath:instancePath+"/columns/" + i0+"/width",schemaPath:"#/properties/columns/items/properties/width/maximum",keyword:"maximum",params:{comparison: "<=", limit: 6},message:"must be <= 6",schema:6,parentSchema:schema186.properties.columns.items.properties.width,data:data11};
if(vErrors === null){
vErrors = [err37];
}
else {
vErrors.push(err37);
}
errors++;
}
if(data11 < 1 || isNaN(data11)){
const err38 = {instancePath:instancePath+"/columns/" + i0+"/width",schemaPath:"#/properties/columns/items/properties/width/minimum",keyword:"minimum",params:{comparison: ">=", limit: 1},message:"must be >= 1",schema:1,parentSchema:schema186.properties.columns.items.properties.width,data:data11};
if(vErrors === null){
vErrors = [err38];
}
else {
vErrors.push(err38);
}
errors++;
}
}
}
if(data7.limit !== undefined){
let data12 = data7.limit;
if(typeof data12 === "string"){
if(func2(data12) > 80){
const err39 = {instancePath:instancePath+"/columns/" + i0+"/limit",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data12};
if(vErrors === null){
vErrors = [err39];
}
else {
vErrors.push(err39);
}
errors++;
}
if(!pattern4.test(data12)){
const err40 = {instancePath:instancePath+"/columns/" + i0+"/limit",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data12};
if(vErrors === null){
vErrors = [err40];
}
else {
vErrors.push(err40);
}
errors++;
}
}
else {
const err41 = {instancePath:instancePath+"/columns/" + i0+"/limit",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data12};
if(vErrors === null){
vErrors = [err41];
}
else {
vErrors.push(err41);
}
errors++;
}
}
if(data7["only-when"] !== undefined){
if(!(validate82(data7["only-when"], {instancePath:instancePath+"/columns/" + i0+"/only-when",parentData:data7,parentDataProperty:"only-when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate82.errors : vErrors.concat(validate82.errors);
errors = vErrors.length;
}
}
if(data7.numbered !== undefined){
let data14 = data7.numbered;
if(typeof data14 !== "boolean"){
const err42 = {instancePath:instancePath+"/columns/" + i0+"/numbered",schemaPath:"#/properties/columns/items/properties/numbered/type",keyword:"type",params:{type: "boolean"},message:"must be boolean",schema:schema186.properties.columns.items.properties.numbered.type,parentSchema:schema186.properties.columns.items.properties.numbered,data:data14};
if(vErrors === null){
vErrors = [err42];
}
else {
vErrors.push(err42);
}
errors++;
}
}
}
else {
const err43 = {instancePath:instancePath+"/columns/" + i0,schemaPath:"#/properties/columns/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema186.properties.columns.items.type,parentSchema:schema186.properties.columns.items,data:data7};
if(vErrors === null){
vErrors = [err43];
}
else {
vErrors.push(err43);
}
errors++;
}
}
}
else {
const err44 = {instancePath:instancePath+"/columns",schemaPath:"#/properties/columns/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema186.properties.columns.type,parentSchema:schema186.properties.columns,data:data6};
if(vErrors === null){
vErrors = [err44];
}
else {
vErrors.push(err44);
}
errors++;
}
}
if(data.rows !== undefined){
let data15 = data.rows;
if(!(((typeof data15 == "number") && (!(data15 % 1) && !isNaN(data15))) && (isFinite(data15)))){
const err45 = {instancePath:instancePath+"/rows",schemaPath:"#/properties/rows/type",keyword:"type",params:{type: "integer"},message:"must be integer",schema:schema186.properties.rows.type,parentSchema:schema186.properties.rows,data:data15};
if(vErrors === null){
vErrors = [err45];
}
else {
vErrors.push(err45);
}
errors++;
}
if((typeof data15 == "number") && (isFinite(data15))){
if(data15 > 40 || isNaN(data15)){
const err46 = {instancePath:instancePath+"/rows",schemaPath:"#/properties/rows/maximum",keyword:"maximum",params:{comparison: "<=", limit: 40},message:"must be <= 40",schema:40,parentSchema:schema186.properties.rows,data:data15};
if(vErrors === null){
vErrors = [err46];
}
else {
vErrors.push(err46);
}
errors++;
}
if(data15 < 3 || isNaN(data15)){
const err47 = {instancePath:instancePath+"/rows",schemaPath:"#/properties/rows/minimum",keyword:"minimum",params:{comparison: ">=", limit: 3},message:"must be >= 3",schema:3,parentSchema:schema186.properties.rows,data:data15};
if(vErrors === null){
vErrors = [err47];
}
else {
vErrors.push(err47);
}
errors++;
}
}
}
if(data["sheet-rows"] !== undefined){
let data16 = data["sheet-rows"];
if(!(((typeof data16 == "number") && (!(data16 % 1) && !isNaN(data16))) && (isFinite(data16)))){
const err48 = {instancePath:instancePath+"/sheet-rows",schemaPath:"#/properties/sheet-rows/type",keyword:"type",params:{type: "integer"},message:"must be integer",schema:schema186.properties["sheet-rows"].type,parentSchema:schema186.properties["sheet-rows"],data:data16};
if(vErrors === null){
vErrors = [err48];
}
else {
vErrors.push(err48);
}
errors++;
}
if((typeof data16 == "number") && (isFinite(data16))){
if(data16 > 40 || isNaN(data16)){
const err49 = {instancePath:instancePath+"/sheet-rows",schemaPath:"#/properties/sheet-rows/maximum",keyword:"maximum",params:{comparison: "<=", limit: 40},message:"must be <= 40",schema:40,parentSchema:schema186.properties["sheet-rows"],data:data16};
if(vErrors === null){
vErrors = [err49];
}
else {
vErrors.push(err49);
}
errors++;
}
if(data16 < 3 || isNaN(data16)){
const err50 = {instancePath:instancePath+"/sheet-rows",schemaPath:"#/properties/sheet-rows/minimum",keyword:"minimum",params:{comparison: ">=", limit: 3},message:"must be >= 3",schema:3,parentSchema:schema186.properties["sheet-rows"],data:data16};
if(vErrors === null){
vErrors = [err50];
}
else {
vErrors.push(err50);
}
errors++;
}
}
}
if(data.period !== undefined){
let data17 = data.period;
if(!(((data17 === "week") || (data17 === "month")) || (data17 === "sheet"))){
const err51 = {instancePath:instancePath+"/period",schemaPath:"#/properties/period/enum",keyword:"enum",params:{allowedValues: schema186.properties.period.enum},message:"must be equal to one of the allowed values",schema:schema186.properties.period.enum,parentSchema:schema186.properties.period,data:data17};
if(vErrors === null){
vErrors = [err51];
}
else {
vErrors.push(err51);
}
errors++;
}
}
if(data.layout !== undefined){
let data18 = data.layout;
if(!((data18 === "portrait") || (data18 === "landscape"))){
const err52 = {instancePath:instancePath+"/layout",schemaPath:"#/properties/layout/enum",keyword:"enum",params:{allowedValues: schema186.properties.layout.enum},message:"must be equal to one of the allowed values",schema:schema186.properties.layout.enum,parentSchema:schema186.properties.layout,data:data18};
if(vErrors === null){
vErrors = [err52];
}
else {
vErrors.push(err52);
}
errors++;
}
}
if(data.covers !== undefined){
let data19 = data.covers;
if(typeof data19 === "string"){
if(func2(data19) > 2000){
const err53 = {instancePath:instancePath+"/covers",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data19};
if(vErrors === null){
vErrors = [err53];
}
else {
vErrors.push(err53);
}
errors++;
}
if(func2(data19) < 1){
const err54 = {instancePath:instancePath+"/covers",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data19};
if(vErrors === null){
vErrors = [err54];
}
else {
vErrors.push(err54);
}
errors++;
}
}
else {
const err55 = {instancePath:instancePath+"/covers",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data19};
if(vErrors === null){
vErrors = [err55];
}
else {
vErrors.push(err55);
}
errors++;
}
}
if(data["signed-by"] !== undefined){
let data20 = data["signed-by"];
if(typeof data20 === "string"){
if(func2(data20) > 80){
const err56 = {instancePath:instancePath+"/signed-by",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data20};
if(vErrors === null){
vErrors = [err56];
}
else {
vErrors.push(err56);
}
errors++;
}
if(!pattern4.test(data20)){
const err57 = {instancePath:instancePath+"/signed-by",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data20};
if(vErrors === null){
vErrors = [err57];
}
else {
vErrors.push(err57);
}
errors++;
}
}
else {
const err58 = {instancePath:instancePath+"/signed-by",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data20};
if(vErrors === null){
vErrors = [err58];
}
else {
vErrors.push(err58);
}
errors++;
}
}
if(data["signed-when"] !== undefined){
let data21 = data["signed-when"];
if(typeof data21 === "string"){
if(func2(data21) > 2000){
const err59 = {instancePath:instancePath+"/signed-when",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data21};
if(vErrors === null){
vErrors = [err59];
}
else {
vErrors.push(err59);
}
errors++;
}
if(func2(data21) < 1){
const err60 = {instancePath:instancePath+"/signed-when",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data21};
if(vErrors === null){
vErrors = [err60];
}
else {
vErrors.push(err60);
}
errors++;
}
}
else {
const err61 = {instancePath:instancePath+"/signed-when",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data21};
if(vErrors === null){
vErrors = [err61];
}
else {
vErrors.push(err61);
}
errors++;
}
}
if(data.keep !== undefined){
let data22 = data.keep;
if(typeof data22 === "string"){
if(func2(data22) > 80){
const err62 = {instancePath:instancePath+"/keep",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data22};
if(vErrors === null){
vErrors = [err62];
}
else {
vErrors.push(err62);
}
errors++;
}
if(!pattern4.test(data22)){
const err63 = {instancePath:instancePath+"/keep",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data22};
if(vErrors === null){
vErrors = [err63];
}
else {
vErrors.push(err63);
}
errors++;
}
}
else {
const err64 = {instancePath:instancePath+"/keep",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data22};
if(vErrors === null){
vErrors = [err64];
}
else {
vErrors.push(err64);
}
errors++;
}
}
if(data.note !== undefined){
let data23 = data.note;
if(typeof data23 === "string"){
if(func2(data23) > 2000){
const err65 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data23};
if(vErrors === null){
vErrors = [err65];
}
else {
vErrors.push(err65);
}
errors++;
}
if(func2(data23) < 1){
const err66 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data23};
if(vErrors === null){
vErrors = [err66];
}
else {
vErrors.push(err66);
}
errors++;
}
}
else {
const err67 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data23};
if(vErrors === null){
vErrors = [err67];
}
else {
vErrors.push(err67);
}
errors++;
}
}
if(data.sample !== undefined){
let data24 = data.sample;
if(Array.isArray(data24)){
if(data24.length > 20){
const err68 = {instancePath:instancePath+"/sample",schemaPath:"#/properties/sample/maxItems",keyword:"maxItems",params:{limit: 20},message:"must NOT have more than 20 items",schema:20,parentSchema:schema186.properties.sample,data:data24};
if(vErrors === null){
vErrors = [err68];
}
else {
vErrors.push(err68);
}
errors++;
}
if(data24.length < 3){
const err69 = {instancePath:instancePath+"/sample",schemaPath:"#/properties/sample/minItems",keyword:"minItems",params:{limit: 3},message:"must NOT have fewer than 3 items",schema:3,parentSchema:schema186.properties.sample,data:data24};
if(vErrors === null){
vErrors = [err69];
}
else {
vErrors.push(err69);
}
errors++;
}
const len1 = data24.length;
for(let i1=0; i1<len1; i1++){
let data25 = data24[i1];
if(data25 && typeof data25 == "object" && !Array.isArray(data25)){
if(data25.cells === undefined){
const err70 = {instancePath:instancePath+"/sample/" + i1,schemaPath:"#/properties/sample/items/required",keyword:"required",params:{missingProperty: "cells"},message:"must have required property '"+"cells"+"'",schema:schema186.properties.sample.items.required,parentSchema:schema186.properties.sample.items,data:data25};
if(vErrors === null){
vErrors = [err70];
}
else {
vErrors.push(err70);
}
errors++;
}
for(const key2 in data25){
if(!((key2 === "cells") || (key2 === "fault"))){
const err71 = {instancePath:instancePath+"/sample/" + i1,schemaPath:"#/properties/sample/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key2},message:"must NOT have additional properties",schema:false,parentSchema:schema186.properties.sample.items,data:data25};
if(vErrors === null){
vErrors = [err71];
}
else {
vErrors.push(err71);
}
errors++;
}
}
if(data25.cells !== undefined){
let data26 = data25.cells;
if(data26 && typeof data26 == "object" && !Array.isArray(data26)){
if(Object.keys(data26).length < 1){
const err72 = {instancePath:instancePath+"/sample/" + i1+"/cells",schemaPath:"#/properties/sample/items/properties/cells/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema186.properties.sample.items.properties.cells,data:data26};
if(vErrors === null){
vErrors = [err72];
}
else {
vErrors.push(err72);
}
errors++;
}
for(const key3 in data26){
const _errs65 = errors;
if(typeof key3 === "string"){
if(func2(key3) > 80){
const err73 = {instancePath:instancePath+"/sample/" + i1+"/cells",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key3,propertyName:key3};
if(vErrors === null){
vErrors = [err73];
}
else {
vErrors.push(err73);
}
errors++;
}
if(!pattern4.test(key3)){
const err74 = {instancePath:instancePath+"/sample/" + i1+"/cells",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key3,propertyName:key3};
if(vErrors === null){
vErrors = [err74];
}
else {
vErrors.push(err74);
}
errors++;
}
}
else {
const err75 = {instancePath:instancePath+"/sample/" + i1+"/cells",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key3,propertyName:key3};
if(vErrors === null){
vErrors = [err75];
}
else {
vErrors.push(err75);
}
errors++;
}
var valid19 = _errs65 === errors;
if(!valid19){
const err76 = {instancePath:instancePath+"/sample/" + i1+"/cells",schemaPath:"#/properties/sample/items/properties/cells/propertyNames",keyword:"propertyNames",params:{propertyName: key3},message:"property name must be valid",schema:schema186.properties.sample.items.properties.cells.propertyNames,parentSchema:schema186.properties.sample.items.properties.cells,data:data26};
if(vErrors === null){
vErrors = [err76];
}
else {
vErrors.push(err76);
}
errors++;
}
}
for(const key4 in data26){
let data27 = data26[key4];
if(typeof data27 === "string"){
if(func2(data27) > 300){
const err77 = {instancePath:instancePath+"/sample/" + i1+"/cells/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/sample/items/properties/cells/additionalProperties/maxLength",keyword:"maxLength",params:{limit: 300},message:"must NOT have more than 300 characters",schema:300,parentSchema:schema186.properties.sample.items.properties.cells.additionalProperties,data:data27};
if(vErrors === null){
vErrors = [err77];
}
else {
vErrors.push(err77);
}
errors++;
}
}
else {
const err78 = {instancePath:instancePath+"/sample/" + i1+"/cells/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/sample/items/properties/cells/additionalProperties/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema186.properties.sample.items.properties.cells.additionalProperties.type,parentSchema:schema186.properties.sample.items.properties.cells.additionalProperties,data:data27};
if(vErrors === null){
vErrors = [err78];
}
else {
vErrors.push(err78);
}
errors++;
}
}
}
else {
const err79 = {instancePath:instancePath+"/sample/" + i1+"/cells",schemaPath:"#/properties/sample/items/properties/cells/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema186.properties.sample.items.properties.cells.type,parentSchema:schema186.properties.sample.items.properties.cells,data:data26};
if(vErrors === null){
vErrors = [err79];
}
else {
vErrors.push(err79);
}
errors++;
}
}
if(data25.fault !== undefined){
let data28 = data25.fault;
if(typeof data28 !== "boolean"){
const err80 = {instancePath:instancePath+"/sample/" + i1+"/fault",schemaPath:"#/properties/sample/items/properties/fault/type",keyword:"type",params:{type: "boolean"},message:"must be boolean",schema:schema186.properties.sample.items.properties.fault.type,parentSchema:schema186.properties.sample.items.properties.fault,data:data28};
if(vErrors === null){
vErrors = [err80];
}
else {
vErrors.push(err80);
}
errors++;
}
}
}
else {
const err81 = {instancePath:instancePath+"/sample/" + i1,schemaPath:"#/properties/sample/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema186.properties.sample.items.type,parentSchema:schema186.properties.sample.items,data:data25};
if(vErrors === null){
vErrors = [err81];
}
else {
vErrors.push(err81);
}
errors++;
}
}
}
else {
const err82 = {instancePath:instancePath+"/sample",schemaPath:"#/properties/sample/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema186.properties.sample.type,parentSchema:schema186.properties.sample,data:data24};
if(vErrors === null){
vErrors = [err82];
}
else {
vErrors.push(err82);
}
errors++;
}
}
}
else {
const err83 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema186.type,parentSchema:schema186,data};
if(vErrors === null){
vErrors = [err83];
}
else {
vErrors.push(err83);
}
errors++;
}
validate81.errors = vErrors;
return errors === 0;
}
validate81.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_instruments = validate89;
const schema201 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"instruments.json","title":"Instruments","description":"Instrument families and what they are made of.","type":"object","additionalProperties":false,"required":["kind","instruments"],"properties":{"kind":{"const":"instruments","description":"The kind of document; it picks this schema."},"instruments":{"type":"object","additionalProperties":{"type":"object","additionalProperties":false,"required":["name","group","facts"],"properties":{"name":{"$ref":"defs.json#/$defs/label"},"group":{"$ref":"defs.json#/$defs/label"},"count":{"type":"integer","minimum":1},"facts":{"$ref":"defs.json#/$defs/situation"},"maker":{"type":"string","minLength":1,"description":"Maker."},"instructions":{"type":"string","minLength":1,"description":"Maker's instructions that were read."},"note":{"$ref":"defs.json#/$defs/text","description":"What staff must know about this family."}}},"propertyNames":{"$ref":"defs.json#/$defs/id"},"minProperties":1}}};

function validate90(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate90.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
for(const key0 in data){
const _errs1 = errors;
if(typeof key0 === "string"){
if(func2(key0) > 80){
const err0 = {instancePath,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(!pattern4.test(key0)){
const err1 = {instancePath,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
else {
const err2 = {instancePath,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key0,propertyName:key0};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
var valid0 = _errs1 === errors;
if(!valid0){
const err3 = {instancePath,schemaPath:"#/propertyNames",keyword:"propertyNames",params:{propertyName: key0},message:"property name must be valid",schema:schema45.propertyNames,parentSchema:schema45,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
for(const key1 in data){
let data0 = data[key1];
if((((typeof data0 !== "string") && (!((typeof data0 == "number") && (isFinite(data0))))) && (typeof data0 !== "boolean")) && (!(Array.isArray(data0)))){
const err4 = {instancePath:instancePath+"/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/additionalProperties/type",keyword:"type",params:{type: schema45.additionalProperties.type},message:"must be string,number,boolean,array",schema:schema45.additionalProperties.type,parentSchema:schema45.additionalProperties,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(Array.isArray(data0)){
const len0 = data0.length;
for(let i0=0; i0<len0; i0++){
let data1 = data0[i0];
if(typeof data1 !== "string"){
const err5 = {instancePath:instancePath+"/" + key1.replace(/~/g, "~0").replace(/\//g, "~1")+"/" + i0,schemaPath:"#/additionalProperties/items/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema45.additionalProperties.items.type,parentSchema:schema45.additionalProperties.items,data:data1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
}
}
}
else {
const err6 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema45.type,parentSchema:schema45,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
validate90.errors = vErrors;
return errors === 0;
}
validate90.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate89(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="instruments.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate89.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema201.required,parentSchema:schema201,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.instruments === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "instruments"},message:"must have required property '"+"instruments"+"'",schema:schema201.required,parentSchema:schema201,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!((key0 === "kind") || (key0 === "instruments"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema201,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("instruments" !== data0){
const err3 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "instruments"},message:"must be equal to constant",schema:"instruments",parentSchema:schema201.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.instruments !== undefined){
let data1 = data.instruments;
if(data1 && typeof data1 == "object" && !Array.isArray(data1)){
if(Object.keys(data1).length < 1){
const err4 = {instancePath:instancePath+"/instruments",schemaPath:"#/properties/instruments/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema201.properties.instruments,data:data1};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
for(const key1 in data1){
const _errs5 = errors;
if(typeof key1 === "string"){
if(func2(key1) > 80){
const err5 = {instancePath:instancePath+"/instruments",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(!pattern4.test(key1)){
const err6 = {instancePath:instancePath+"/instruments",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/instruments",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
var valid1 = _errs5 === errors;
if(!valid1){
const err8 = {instancePath:instancePath+"/instruments",schemaPath:"#/properties/instruments/propertyNames",keyword:"propertyNames",params:{propertyName: key1},message:"property name must be valid",schema:schema201.properties.instruments.propertyNames,parentSchema:schema201.properties.instruments,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
for(const key2 in data1){
let data2 = data1[key2];
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.name === undefined){
const err9 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/instruments/additionalProperties/required",keyword:"required",params:{missingProperty: "name"},message:"must have required property '"+"name"+"'",schema:schema201.properties.instruments.additionalProperties.required,parentSchema:schema201.properties.instruments.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(data2.group === undefined){
const err10 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/instruments/additionalProperties/required",keyword:"required",params:{missingProperty: "group"},message:"must have required property '"+"group"+"'",schema:schema201.properties.instruments.additionalProperties.required,parentSchema:schema201.properties.instruments.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
if(data2.facts === undefined){
const err11 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/instruments/additionalProperties/required",keyword:"required",params:{missingProperty: "facts"},message:"must have required property '"+"facts"+"'",schema:schema201.properties.instruments.additionalProperties.required,parentSchema:schema201.properties.instruments.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
for(const key3 in data2){
if(!(((((((key3 === "name") || (key3 === "group")) || (key3 === "count")) || (key3 === "facts")) || (key3 === "maker")) || (key3 === "instructions")) || (key3 === "note"))){
const err12 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/instruments/additionalProperties/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key3},message:"must NOT have additional properties",schema:false,parentSchema:schema201.properties.instruments.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
if(data2.name !== undefined){
let data3 = data2.name;
if(typeof data3 === "string"){
if(func2(data3) > 120){
const err13 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/name",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
if(func2(data3) < 1){
const err14 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/name",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
else {
const err15 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/name",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
}
if(data2.group !== undefined){
let data4 = data2.group;
if(typeof data4 === "string"){
if(func2(data4) > 120){
const err16 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/group",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data4};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
if(func2(data4) < 1){
const err17 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/group",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data4};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
else {
const err18 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/group",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data4};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
if(data2.count !== undefined){
let data5 = data2.count;
if(!(((typeof data5 == "number") && (!(data5 % 1) && !isNaN(data5))) && (isFinite(data5)))){
const err19 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/count",schemaPath:"#/properties/instruments/additionalProperties/properties/count/type",keyword:"type",params:{type: "integer"},message:"must be integer",schema:schema201.properties.instruments.additionalProperties.properties.count.type,parentSchema:schema201.properties.instruments.additionalProperties.properties.count,data:data5};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
if((typeof data5 == "number") && (isFinite(data5))){
if(data5 < 1 || isNaN(data5)){
const err20 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/count",schemaPath:"#/properties/instruments/additionalProperties/properties/count/minimum",keyword:"minimum",params:{comparison: ">=", limit: 1},message:"must be >= 1",schema:1,parentSchema:schema201.properties.instruments.additionalProperties.properties.count,data:data5};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
}
if(data2.facts !== undefined){
if(!(validate90(data2.facts, {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/facts",parentData:data2,parentDataProperty:"facts",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate90.errors : vErrors.concat(validate90.errors);
errors = vErrors.length;
}
}
if(data2.maker !== undefined){
let data7 = data2.maker;
if(typeof data7 === "string"){
if(func2(data7) < 1){
const err21 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/maker",schemaPath:"#/properties/instruments/additionalProperties/properties/maker/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema201.properties.instruments.additionalProperties.properties.maker,data:data7};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
else {
const err22 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/maker",schemaPath:"#/properties/instruments/additionalProperties/properties/maker/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema201.properties.instruments.additionalProperties.properties.maker.type,parentSchema:schema201.properties.instruments.additionalProperties.properties.maker,data:data7};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
if(data2.instructions !== undefined){
let data8 = data2.instructions;
if(typeof data8 === "string"){
if(func2(data8) < 1){
const err23 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/instructions",schemaPath:"#/properties/instruments/additionalProperties/properties/instructions/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema201.properties.instruments.additionalProperties.properties.instructions,data:data8};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
else {
const err24 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/instructions",schemaPath:"#/properties/instruments/additionalProperties/properties/instructions/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema201.properties.instruments.additionalProperties.properties.instructions.type,parentSchema:schema201.properties.instruments.additionalProperties.properties.instructions,data:data8};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
if(data2.note !== undefined){
let data9 = data2.note;
if(typeof data9 === "string"){
if(func2(data9) > 2000){
const err25 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data9};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
if(func2(data9) < 1){
const err26 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data9};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
else {
const err27 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data9};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
}
}
else {
const err28 = {instancePath:instancePath+"/instruments/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/instruments/additionalProperties/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema201.properties.instruments.additionalProperties.type,parentSchema:schema201.properties.instruments.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
}
}
else {
const err29 = {instancePath:instancePath+"/instruments",schemaPath:"#/properties/instruments/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema201.properties.instruments.type,parentSchema:schema201.properties.instruments,data:data1};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
}
}
else {
const err30 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema201.type,parentSchema:schema201,data};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
validate89.errors = vErrors;
return errors === 0;
}
validate89.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_limits = validate92;
const schema208 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"limits.json","title":"Limits","description":"Named quantities with their stricter direction and values by date.","type":"object","additionalProperties":false,"required":["kind","limits"],"properties":{"kind":{"const":"limits","description":"The kind of document; it picks this schema."},"limits":{"type":"object","additionalProperties":{"type":"object","additionalProperties":false,"required":["label","stricter","values"],"properties":{"label":{"$ref":"defs.json#/$defs/label","description":"What is limited."},"stricter":{"enum":["lower","higher"],"description":"Which way is stricter."},"values":{"type":"array","items":{"$ref":"defs.json#/$defs/limit-value"},"minItems":1,"description":"Its values by date, oldest first."},"note":{"$ref":"defs.json#/$defs/text","description":"What a reader should know, such as where sources disagree."}}},"propertyNames":{"$ref":"defs.json#/$defs/id"},"minProperties":1}}};
const schema211 = {"type":"object","additionalProperties":false,"required":["value","source"],"properties":{"from":{"$ref":"defs.json#/$defs/date","description":"First day on which this value holds."},"value":{"$ref":"defs.json#/$defs/quantity"},"source":{"$ref":"defs.json#/$defs/source","description":"Where this is from."}},"description":"A value of a limit from a date on."};

function validate93(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate93.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.value === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "value"},message:"must have required property '"+"value"+"'",schema:schema211.required,parentSchema:schema211,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.source === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema211.required,parentSchema:schema211,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!(((key0 === "from") || (key0 === "value")) || (key0 === "source"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema211,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.from !== undefined){
let data0 = data.from;
if(typeof data0 === "string"){
if(!pattern18.test(data0)){
const err3 = {instancePath:instancePath+"/from",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
else {
const err4 = {instancePath:instancePath+"/from",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.value !== undefined){
let data1 = data.value;
if(typeof data1 === "string"){
if(func2(data1) > 40){
const err5 = {instancePath:instancePath+"/value",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(!pattern51.test(data1)){
const err6 = {instancePath:instancePath+"/value",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/value",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
if(data.source !== undefined){
if(!(validate48(data.source, {instancePath:instancePath+"/source",parentData:data,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate48.errors : vErrors.concat(validate48.errors);
errors = vErrors.length;
}
}
}
else {
const err8 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema211.type,parentSchema:schema211,data};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
validate93.errors = vErrors;
return errors === 0;
}
validate93.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate92(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="limits.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate92.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema208.required,parentSchema:schema208,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.limits === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "limits"},message:"must have required property '"+"limits"+"'",schema:schema208.required,parentSchema:schema208,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!((key0 === "kind") || (key0 === "limits"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema208,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("limits" !== data0){
const err3 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "limits"},message:"must be equal to constant",schema:"limits",parentSchema:schema208.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.limits !== undefined){
let data1 = data.limits;
if(data1 && typeof data1 == "object" && !Array.isArray(data1)){
if(Object.keys(data1).length < 1){
const err4 = {instancePath:instancePath+"/limits",schemaPath:"#/properties/limits/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema208.properties.limits,data:data1};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
for(const key1 in data1){
const _errs5 = errors;
if(typeof key1 === "string"){
if(func2(key1) > 80){
const err5 = {instancePath:instancePath+"/limits",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(!pattern4.test(key1)){
const err6 = {instancePath:instancePath+"/limits",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/limits",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
var valid1 = _errs5 === errors;
if(!valid1){
const err8 = {instancePath:instancePath+"/limits",schemaPath:"#/properties/limits/propertyNames",keyword:"propertyNames",params:{propertyName: key1},message:"property name must be valid",schema:schema208.properties.limits.propertyNames,parentSchema:schema208.properties.limits,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
for(const key2 in data1){
let data2 = data1[key2];
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.label === undefined){
const err9 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/limits/additionalProperties/required",keyword:"required",params:{missingProperty: "label"},message:"must have required property '"+"label"+"'",schema:schema208.properties.limits.additionalProperties.required,parentSchema:schema208.properties.limits.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(data2.stricter === undefined){
const err10 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/limits/additionalProperties/required",keyword:"required",params:{missingProperty: "stricter"},message:"must have required property '"+"stricter"+"'",schema:schema208.properties.limits.additionalProperties.required,parentSchema:schema208.properties.limits.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
if(data2.values === undefined){
const err11 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/limits/additionalProperties/required",keyword:"required",params:{missingProperty: "values"},message:"must have required property '"+"values"+"'",schema:schema208.properties.limits.additionalProperties.required,parentSchema:schema208.properties.limits.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
for(const key3 in data2){
if(!((((key3 === "label") || (key3 === "stricter")) || (key3 === "values")) || (key3 === "note"))){
const err12 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/limits/additionalProperties/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key3},message:"must NOT have additional properties",schema:false,parentSchema:schema208.properties.limits.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
if(data2.label !== undefined){
let data3 = data2.label;
if(typeof data3 === "string"){
if(func2(data3) > 120){
const err13 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/label",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
if(func2(data3) < 1){
const err14 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/label",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
else {
const err15 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/label",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
}
if(data2.stricter !== undefined){
let data4 = data2.stricter;
if(!((data4 === "lower") || (data4 === "higher"))){
const err16 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/stricter",schemaPath:"#/properties/limits/additionalProperties/properties/stricter/enum",keyword:"enum",params:{allowedValues: schema208.properties.limits.additionalProperties.properties.stricter.enum},message:"must be equal to one of the allowed values",schema:schema208.properties.limits.additionalProperties.properties.stricter.enum,parentSchema:schema208.properties.limits.additionalProperties.properties.stricter,data:data4};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
if(data2.values !== undefined){
let data5 = data2.values;
if(Array.isArray(data5)){
if(data5.length < 1){
const err17 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/values",schemaPath:"#/properties/limits/additionalProperties/properties/values/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema208.properties.limits.additionalProperties.properties.values,data:data5};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
const len0 = data5.length;
for(let i0=0; i0<len0; i0++){
if(!(validate93(data5[i0], {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/values/" + i0,parentData:data5,parentDataProperty:i0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate93.errors : vErrors.concat(validate93.errors);
errors = vErrors.length;
}
}
}
else {
const err18 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/values",schemaPath:"#/properties/limits/additionalProperties/properties/values/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema208.properties.limits.additionalProperties.properties.values.type,parentSchema:schema208.properties.limits.additionalProperties.properties.values,data:data5};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
if(data2.note !== undefined){
let data7 = data2.note;
if(typeof data7 === "string"){
if(func2(data7) > 2000){
const err19 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data7};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
if(func2(data7) < 1){
const err20 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data7};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
else {
const err21 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data7};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
}
else {
const err22 = {instancePath:instancePath+"/limits/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/limits/additionalProperties/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema208.properties.limits.additionalProperties.type,parentSchema:schema208.properties.limits.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
}
else {
const err23 = {instancePath:instancePath+"/limits",schemaPath:"#/properties/limits/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema208.properties.limits.type,parentSchema:schema208.properties.limits,data:data1};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
}
else {
const err24 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema208.type,parentSchema:schema208,data};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
validate92.errors = vErrors;
return errors === 0;
}
validate92.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_overrides = validate96;
const schema215 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"overrides.json","title":"Overrides","description":"What a region or a clinic changes, and why.","type":"object","additionalProperties":false,"required":["kind","changes"],"properties":{"kind":{"const":"overrides","description":"The kind of document; it picks this schema."},"changes":{"type":"array","items":{"type":"object","required":["change"],"discriminator":{"propertyName":"change"},"oneOf":[{"type":"object","additionalProperties":false,"required":["change","limit","value","source","because"],"properties":{"change":{"const":"limit"},"limit":{"$ref":"defs.json#/$defs/id"},"value":{"$ref":"defs.json#/$defs/quantity"},"from":{"$ref":"defs.json#/$defs/date"},"because":{"$ref":"defs.json#/$defs/text","description":"Why."},"source":{"$ref":"defs.json#/$defs/source"},"deviation":{"$ref":"defs.json#/$defs/deviation"}}},{"type":"object","additionalProperties":false,"required":["change","task","every","source","because"],"properties":{"change":{"const":"interval"},"task":{"$ref":"defs.json#/$defs/id"},"every":{"$ref":"defs.json#/$defs/interval"},"because":{"$ref":"defs.json#/$defs/text","description":"Why."},"source":{"$ref":"defs.json#/$defs/source"},"deviation":{"$ref":"defs.json#/$defs/deviation"}}},{"type":"object","additionalProperties":false,"required":["change","decision","rule","because"],"properties":{"change":{"const":"add-rule"},"decision":{"$ref":"defs.json#/$defs/id"},"rule":{"$ref":"defs.json#/$defs/rule"},"because":{"$ref":"defs.json#/$defs/text","description":"Why."},"source":{"$ref":"defs.json#/$defs/source"},"deviation":{"$ref":"defs.json#/$defs/deviation"}}},{"type":"object","additionalProperties":false,"required":["change","decision","rule","because"],"properties":{"change":{"const":"replace-rule"},"decision":{"$ref":"defs.json#/$defs/id"},"rule":{"$ref":"defs.json#/$defs/rule","description":"A rule with the id of the one it replaces."},"because":{"$ref":"defs.json#/$defs/text","description":"Why."},"source":{"$ref":"defs.json#/$defs/source"},"deviation":{"$ref":"defs.json#/$defs/deviation"}}},{"type":"object","additionalProperties":false,"required":["change","decision","rule","because"],"properties":{"change":{"const":"retire-rule"},"decision":{"$ref":"defs.json#/$defs/id"},"rule":{"$ref":"defs.json#/$defs/id"},"because":{"$ref":"defs.json#/$defs/text","description":"Why."},"source":{"$ref":"defs.json#/$defs/source"},"deviation":{"$ref":"defs.json#/$defs/deviation"}}},{"type":"object","additionalProperties":false,"required":["change","procedure","after","step","because"],"properties":{"change":{"const":"add-step"},"procedure":{"$ref":"defs.json#/$defs/id"},"after":{"$ref":"defs.json#/$defs/id","description":"Id of the step it follows."},"step":{"$ref":"defs.json#/$defs/step"},"because":{"$ref":"defs.json#/$defs/text","description":"Why."},"source":{"$ref":"defs.json#/$defs/source"},"deviation":{"$ref":"defs.json#/$defs/deviation"}}},{"type":"object","additionalProperties":false,"required":["change","procedure","step","because"],"properties":{"change":{"const":"replace-step"},"procedure":{"$ref":"defs.json#/$defs/id"},"step":{"$ref":"defs.json#/$defs/step"},"because":{"$ref":"defs.json#/$defs/text","description":"Why."},"source":{"$ref":"defs.json#/$defs/source"},"deviation":{"$ref":"defs.json#/$defs/deviation"}}},{"type":"object","additionalProperties":false,"required":["change","policy","after","point","because"],"properties":{"change":{"const":"add-point"},"policy":{"$ref":"defs.json#/$defs/id"},"after":{"$ref":"defs.json#/$defs/id","description":"Id of the point it follows."},"point":{"$ref":"defs.json#/$defs/point"},"because":{"$ref":"defs.json#/$defs/text","description":"Why."},"source":{"$ref":"defs.json#/$defs/source"},"deviation":{"$ref":"defs.json#/$defs/deviation"}}},{"type":"object","additionalProperties":false,"required":["change","policy","point","because"],"properties":{"change":{"const":"replace-point"},"policy":{"$ref":"defs.json#/$defs/id"},"point":{"$ref":"defs.json#/$defs/point"},"because":{"$ref":"defs.json#/$defs/text","description":"Why."},"source":{"$ref":"defs.json#/$defs/source"},"deviation":{"$ref":"defs.json#/$defs/deviation"}}},{"type":"object","additionalProperties":false,"required":["change","term","label","because"],"properties":{"change":{"const":"term"},"term":{"$ref":"defs.json#/$defs/id"},"label":{"$ref":"defs.json#/$defs/label","description":"The word as this region or clinic says it."},"plural":{"$ref":"defs.json#/$defs/label"},"definition":{"$ref":"defs.json#/$defs/text","description":"What it means here."},"because":{"$ref":"defs.json#/$defs/text","description":"Why."},"source":{"$ref":"defs.json#/$defs/source"}}}]},"minItems":1}}};

function validate97(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate97.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if((typeof data !== "string") && (!(data && typeof data == "object" && !Array.isArray(data)))){
const err0 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: schema96.type},message:"must be string,object",schema:schema96.type,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(typeof data === "string"){
if(!pattern40.test(data)){
const err1 = {instancePath,schemaPath:"#/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*$",parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema96.required,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
for(const key0 in data){
if(!(((((key0 === "id") || (key0 === "at")) || (key0 === "evidence")) || (key0 === "checked")) || (key0 === "note"))){
const err3 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err4 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(!pattern4.test(data0)){
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
else {
const err6 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
if(data.at !== undefined){
let data1 = data.at;
if(typeof data1 === "string"){
if(func2(data1) < 1){
const err7 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
else {
const err8 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema96.properties.at.type,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.evidence !== undefined){
let data2 = data.evidence;
if(!((((data2 === "read") || (data2 === "recalled")) || (data2 === "computed")) || (data2 === "decided"))){
const err9 = {instancePath:instancePath+"/evidence",schemaPath:"defs.json#/$defs/evidence/enum",keyword:"enum",params:{allowedValues: schema98.enum},message:"must be equal to one of the allowed values",schema:schema98.enum,parentSchema:schema98,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
if(data.checked !== undefined){
let data3 = data.checked;
if(typeof data3 === "string"){
if(!pattern18.test(data3)){
const err10 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
else {
const err11 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.note !== undefined){
let data4 = data.note;
if(typeof data4 === "string"){
if(func2(data4) > 2000){
const err12 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data4) < 1){
const err13 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
}
validate97.errors = vErrors;
return errors === 0;
}
validate97.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const schema225 = {"type":"object","additionalProperties":false,"required":["reason","source","approved-by","review-by"],"properties":{"reason":{"$ref":"defs.json#/$defs/text","description":"Why the clinic departs from the stricter value."},"source":{"$ref":"defs.json#/$defs/source","description":"What supports it."},"approved-by":{"$ref":"defs.json#/$defs/id","description":"Id of the person who approved it."},"approved-on":{"$ref":"defs.json#/$defs/date"},"review-by":{"$ref":"defs.json#/$defs/date","description":"When it is looked at again."}},"description":"A recorded deviation: what makes a less strict change allowed."};

function validate99(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate99.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.reason === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "reason"},message:"must have required property '"+"reason"+"'",schema:schema225.required,parentSchema:schema225,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.source === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema225.required,parentSchema:schema225,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data["approved-by"] === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "approved-by"},message:"must have required property '"+"approved-by"+"'",schema:schema225.required,parentSchema:schema225,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
if(data["review-by"] === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "review-by"},message:"must have required property '"+"review-by"+"'",schema:schema225.required,parentSchema:schema225,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
for(const key0 in data){
if(!(((((key0 === "reason") || (key0 === "source")) || (key0 === "approved-by")) || (key0 === "approved-on")) || (key0 === "review-by"))){
const err4 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema225,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.reason !== undefined){
let data0 = data.reason;
if(typeof data0 === "string"){
if(func2(data0) > 2000){
const err5 = {instancePath:instancePath+"/reason",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(func2(data0) < 1){
const err6 = {instancePath:instancePath+"/reason",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data0};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/reason",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data0};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
if(data.source !== undefined){
if(!(validate48(data.source, {instancePath:instancePath+"/source",parentData:data,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate48.errors : vErrors.concat(validate48.errors);
errors = vErrors.length;
}
}
if(data["approved-by"] !== undefined){
let data2 = data["approved-by"];
if(typeof data2 === "string"){
if(func2(data2) > 80){
const err8 = {instancePath:instancePath+"/approved-by",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data2};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(!pattern4.test(data2)){
const err9 = {instancePath:instancePath+"/approved-by",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
else {
const err10 = {instancePath:instancePath+"/approved-by",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
if(data["approved-on"] !== undefined){
let data3 = data["approved-on"];
if(typeof data3 === "string"){
if(!pattern18.test(data3)){
const err11 = {instancePath:instancePath+"/approved-on",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
else {
const err12 = {instancePath:instancePath+"/approved-on",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
if(data["review-by"] !== undefined){
let data4 = data["review-by"];
if(typeof data4 === "string"){
if(!pattern18.test(data4)){
const err13 = {instancePath:instancePath+"/review-by",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/review-by",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
}
else {
const err15 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema225.type,parentSchema:schema225,data};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
validate99.errors = vErrors;
return errors === 0;
}
validate99.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate104(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate104.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema88.required,parentSchema:schema88,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.when === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "when"},message:"must have required property '"+"when"+"'",schema:schema88.required,parentSchema:schema88,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data.because === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema88.required,parentSchema:schema88,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
if(data.source === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema88.required,parentSchema:schema88,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
for(const key0 in data){
if(!(func1.call(schema88.properties, key0))){
const err4 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema88,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(!pattern4.test(data0)){
const err6 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
if(data.when !== undefined){
if(!(validate22(data.when, {instancePath:instancePath+"/when",parentData:data,parentDataProperty:"when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
if(data.outcome !== undefined){
let data2 = data.outcome;
if(typeof data2 === "string"){
if(func2(data2) > 80){
const err8 = {instancePath:instancePath+"/outcome",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data2};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(!pattern4.test(data2)){
const err9 = {instancePath:instancePath+"/outcome",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
else {
const err10 = {instancePath:instancePath+"/outcome",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
if(data.needs !== undefined){
if(!(validate22(data.needs, {instancePath:instancePath+"/needs",parentData:data,parentDataProperty:"needs",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
if(data["adds-only"] !== undefined){
let data4 = data["adds-only"];
if(typeof data4 !== "boolean"){
const err11 = {instancePath:instancePath+"/adds-only",schemaPath:"#/properties/adds-only/type",keyword:"type",params:{type: "boolean"},message:"must be boolean",schema:schema88.properties["adds-only"].type,parentSchema:schema88.properties["adds-only"],data:data4};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.because !== undefined){
let data5 = data.because;
if(typeof data5 === "string"){
if(func2(data5) > 2000){
const err12 = {instancePath:instancePath+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data5) < 1){
const err13 = {instancePath:instancePath+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
if(data.instead !== undefined){
let data6 = data.instead;
if(typeof data6 === "string"){
if(func2(data6) > 80){
const err15 = {instancePath:instancePath+"/instead",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data6};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(!pattern4.test(data6)){
const err16 = {instancePath:instancePath+"/instead",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data6};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
else {
const err17 = {instancePath:instancePath+"/instead",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data6};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
if(data.cautions !== undefined){
let data7 = data.cautions;
if(Array.isArray(data7)){
if(data7.length < 1){
const err18 = {instancePath:instancePath+"/cautions",schemaPath:"#/properties/cautions/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema88.properties.cautions,data:data7};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
const len0 = data7.length;
for(let i0=0; i0<len0; i0++){
let data8 = data7[i0];
if(typeof data8 === "string"){
if(func2(data8) > 2000){
const err19 = {instancePath:instancePath+"/cautions/" + i0,schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data8};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
if(func2(data8) < 1){
const err20 = {instancePath:instancePath+"/cautions/" + i0,schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data8};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
else {
const err21 = {instancePath:instancePath+"/cautions/" + i0,schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data8};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
}
else {
const err22 = {instancePath:instancePath+"/cautions",schemaPath:"#/properties/cautions/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema88.properties.cautions.type,parentSchema:schema88.properties.cautions,data:data7};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
if(data.from !== undefined){
let data9 = data.from;
if(typeof data9 === "string"){
if(!pattern18.test(data9)){
const err23 = {instancePath:instancePath+"/from",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data9};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
else {
const err24 = {instancePath:instancePath+"/from",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data9};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
if(data.until !== undefined){
let data10 = data.until;
if(typeof data10 === "string"){
if(!pattern18.test(data10)){
const err25 = {instancePath:instancePath+"/until",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data10};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
}
else {
const err26 = {instancePath:instancePath+"/until",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data10};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
if(data.source !== undefined){
if(!(validate48(data.source, {instancePath:instancePath+"/source",parentData:data,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate48.errors : vErrors.concat(validate48.errors);
errors = vErrors.length;
}
}
if(data.examples !== undefined){
let data12 = data.examples;
if(Array.isArray(data12)){
if(data12.length < 1){
const err27 = {instancePath:instancePath+"/examples",schemaPath:"#/properties/examples/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema88.properties.examples,data:data12};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
const len1 = data12.length;
for(let i1=0; i1<len1; i1++){
if(!(validate50(data12[i1], {instancePath:instancePath+"/examples/" + i1,parentData:data12,parentDataProperty:i1,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate50.errors : vErrors.concat(validate50.errors);
errors = vErrors.length;
}
}
}
else {
const err28 = {instancePath:instancePath+"/examples",schemaPath:"#/properties/examples/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema88.properties.examples.type,parentSchema:schema88.properties.examples,data:data12};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
}
}
else {
const err29 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema88.type,parentSchema:schema88,data};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
validate104.errors = vErrors;
return errors === 0;
}
validate104.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const schema250 = {"type":"object","additionalProperties":false,"required":["id","do"],"properties":{"id":{"$ref":"defs.json#/$defs/id","description":"Unique within its procedure."},"do":{"$ref":"defs.json#/$defs/text","description":"One action, verb first."},"why":{"$ref":"defs.json#/$defs/text","description":"The reason, only where it changes what someone does."},"only-when":{"$ref":"defs.json#/$defs/condition","description":"Printed only where this holds for the clinic, or for one of its machines (facts stated by the clinic folder and its machine sheets)."},"caution":{"$ref":"defs.json#/$defs/text","description":"What can hurt someone in this step."},"if-not":{"$ref":"defs.json#/$defs/text","description":"What to do when the step does not come out as it should."},"on-card":{"$ref":"defs.json#/$defs/text","description":"The step in few words, for a wall card. A step that a region or the clinic adds stands on the cards of its procedure only with it; a replaced step is printed there in full without it."},"source":{"$ref":"defs.json#/$defs/source","description":"Where this is from."}},"description":"One step of a procedure."};

function validate117(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate117.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema250.required,parentSchema:schema250,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.do === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "do"},message:"must have required property '"+"do"+"'",schema:schema250.required,parentSchema:schema250,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!((((((((key0 === "id") || (key0 === "do")) || (key0 === "why")) || (key0 === "only-when")) || (key0 === "caution")) || (key0 === "if-not")) || (key0 === "on-card")) || (key0 === "source"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema250,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err3 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(!pattern4.test(data0)){
const err4 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
else {
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
if(data.do !== undefined){
let data1 = data.do;
if(typeof data1 === "string"){
if(func2(data1) > 2000){
const err6 = {instancePath:instancePath+"/do",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
if(func2(data1) < 1){
const err7 = {instancePath:instancePath+"/do",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
else {
const err8 = {instancePath:instancePath+"/do",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.why !== undefined){
let data2 = data.why;
if(typeof data2 === "string"){
if(func2(data2) > 2000){
const err9 = {instancePath:instancePath+"/why",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(func2(data2) < 1){
const err10 = {instancePath:instancePath+"/why",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
else {
const err11 = {instancePath:instancePath+"/why",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data["only-when"] !== undefined){
if(!(validate22(data["only-when"], {instancePath:instancePath+"/only-when",parentData:data,parentDataProperty:"only-when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
if(data.caution !== undefined){
let data4 = data.caution;
if(typeof data4 === "string"){
if(func2(data4) > 2000){
const err12 = {instancePath:instancePath+"/caution",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data4) < 1){
const err13 = {instancePath:instancePath+"/caution",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/caution",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
if(data["if-not"] !== undefined){
let data5 = data["if-not"];
if(typeof data5 === "string"){
if(func2(data5) > 2000){
const err15 = {instancePath:instancePath+"/if-not",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(func2(data5) < 1){
const err16 = {instancePath:instancePath+"/if-not",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
else {
const err17 = {instancePath:instancePath+"/if-not",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
if(data["on-card"] !== undefined){
let data6 = data["on-card"];
if(typeof data6 === "string"){
if(func2(data6) > 2000){
const err18 = {instancePath:instancePath+"/on-card",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
if(func2(data6) < 1){
const err19 = {instancePath:instancePath+"/on-card",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
else {
const err20 = {instancePath:instancePath+"/on-card",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
if(data.source !== undefined){
if(!(validate48(data.source, {instancePath:instancePath+"/source",parentData:data,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate48.errors : vErrors.concat(validate48.errors);
errors = vErrors.length;
}
}
}
else {
const err21 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema250.type,parentSchema:schema250,data};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
validate117.errors = vErrors;
return errors === 0;
}
validate117.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const schema262 = {"type":"object","additionalProperties":false,"required":["id","say"],"properties":{"id":{"$ref":"defs.json#/$defs/id","description":"Unique within its policy."},"say":{"$ref":"defs.json#/$defs/text","description":"One rule, verb first."},"why":{"$ref":"defs.json#/$defs/text","description":"The reason, only where it changes what someone does."},"only-when":{"$ref":"defs.json#/$defs/condition","description":"Printed only where this holds for the clinic."},"caution":{"$ref":"defs.json#/$defs/text","description":"What can hurt someone here."},"if-not":{"$ref":"defs.json#/$defs/text","description":"What to do when it cannot be kept or was not kept."},"source":{"$ref":"defs.json#/$defs/source","description":"Where this is from; without it, where the policy is from."}},"description":"One rule of a policy."};

function validate126(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate126.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema262.required,parentSchema:schema262,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.say === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "say"},message:"must have required property '"+"say"+"'",schema:schema262.required,parentSchema:schema262,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!(((((((key0 === "id") || (key0 === "say")) || (key0 === "why")) || (key0 === "only-when")) || (key0 === "caution")) || (key0 === "if-not")) || (key0 === "source"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema262,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err3 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(!pattern4.test(data0)){
const err4 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
else {
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
if(data.say !== undefined){
let data1 = data.say;
if(typeof data1 === "string"){
if(func2(data1) > 2000){
const err6 = {instancePath:instancePath+"/say",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
if(func2(data1) < 1){
const err7 = {instancePath:instancePath+"/say",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
else {
const err8 = {instancePath:instancePath+"/say",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.why !== undefined){
let data2 = data.why;
if(typeof data2 === "string"){
if(func2(data2) > 2000){
const err9 = {instancePath:instancePath+"/why",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(func2(data2) < 1){
const err10 = {instancePath:instancePath+"/why",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
else {
const err11 = {instancePath:instancePath+"/why",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data["only-when"] !== undefined){
if(!(validate22(data["only-when"], {instancePath:instancePath+"/only-when",parentData:data,parentDataProperty:"only-when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
if(data.caution !== undefined){
let data4 = data.caution;
if(typeof data4 === "string"){
if(func2(data4) > 2000){
const err12 = {instancePath:instancePath+"/caution",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data4) < 1){
const err13 = {instancePath:instancePath+"/caution",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/caution",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
if(data["if-not"] !== undefined){
let data5 = data["if-not"];
if(typeof data5 === "string"){
if(func2(data5) > 2000){
const err15 = {instancePath:instancePath+"/if-not",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(func2(data5) < 1){
const err16 = {instancePath:instancePath+"/if-not",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
else {
const err17 = {instancePath:instancePath+"/if-not",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
if(data.source !== undefined){
if(!(validate48(data.source, {instancePath:instancePath+"/source",parentData:data,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate48.errors : vErrors.concat(validate48.errors);
errors = vErrors.length;
}
}
}
else {
const err18 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema262.type,parentSchema:schema262,data};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
validate126.errors = vErrors;
return errors === 0;
}
validate126.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate96(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="overrides.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate96.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema215.required,parentSchema:schema215,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.changes === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "changes"},message:"must have required property '"+"changes"+"'",schema:schema215.required,parentSchema:schema215,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!((key0 === "kind") || (key0 === "changes"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema215,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("overrides" !== data0){
const err3 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "overrides"},message:"must be equal to constant",schema:"overrides",parentSchema:schema215.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.changes !== undefined){
let data1 = data.changes;
if(Array.isArray(data1)){
if(data1.length < 1){
const err4 = {instancePath:instancePath+"/changes",schemaPath:"#/properties/changes/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema215.properties.changes,data:data1};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
const len0 = data1.length;
for(let i0=0; i0<len0; i0++){
let data2 = data1[i0];
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.change === undefined){
const err5 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/required",keyword:"required",params:{missingProperty: "change"},message:"must have required property '"+"change"+"'",schema:schema215.properties.changes.items.required,parentSchema:schema215.properties.changes.items,data:data2};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
const tag0 = data2.change;
if(typeof tag0 == "string"){
if(tag0 === "limit"){
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.change === undefined){
const err6 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/0/required",keyword:"required",params:{missingProperty: "change"},message:"must have required property '"+"change"+"'",schema:schema215.properties.changes.items.oneOf[0].required,parentSchema:schema215.properties.changes.items.oneOf[0],data:data2};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
if(data2.limit === undefined){
const err7 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/0/required",keyword:"required",params:{missingProperty: "limit"},message:"must have required property '"+"limit"+"'",schema:schema215.properties.changes.items.oneOf[0].required,parentSchema:schema215.properties.changes.items.oneOf[0],data:data2};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
if(data2.value === undefined){
const err8 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/0/required",keyword:"required",params:{missingProperty: "value"},message:"must have required property '"+"value"+"'",schema:schema215.properties.changes.items.oneOf[0].required,parentSchema:schema215.properties.changes.items.oneOf[0],data:data2};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(data2.source === undefined){
const err9 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/0/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema215.properties.changes.items.oneOf[0].required,parentSchema:schema215.properties.changes.items.oneOf[0],data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(data2.because === undefined){
const err10 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/0/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema215.properties.changes.items.oneOf[0].required,parentSchema:schema215.properties.changes.items.oneOf[0],data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
for(const key1 in data2){
if(!(((((((key1 === "change") || (key1 === "limit")) || (key1 === "value")) || (key1 === "from")) || (key1 === "because")) || (key1 === "source")) || (key1 === "deviation"))){
const err11 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/0/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key1},message:"must NOT have additional properties",schema:false,parentSchema:schema215.properties.changes.items.oneOf[0],data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data2.change !== undefined){
let data3 = data2.change;
if("limit" !== data3){
const err12 = {instancePath:instancePath+"/changes/" + i0+"/change",schemaPath:"#/properties/changes/items/oneOf/0/properties/change/const",keyword:"const",params:{allowedValue: "limit"},message:"must be equal to constant",schema:"limit",parentSchema:schema215.properties.changes.items.oneOf[0].properties.change,data:data3};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
if(data2.limit !== undefined){
let data4 = data2.limit;
if(typeof data4 === "string"){
if(func2(data4) > 80){
const err13 = {instancePath:instancePath+"/changes/" + i0+"/limit",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
if(!pattern4.test(data4)){
const err14 = {instancePath:instancePath+"/changes/" + i0+"/limit",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
else {
const err15 = {instancePath:instancePath+"/changes/" + i0+"/limit",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
}
if(data2.value !== undefined){
let data5 = data2.value;
if(typeof data5 === "string"){
if(func2(data5) > 40){
const err16 = {instancePath:instancePath+"/changes/" + i0+"/value",schemaPath:"defs.json#/$defs/quantity/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema118,data:data5};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
if(!pattern51.test(data5)){
const err17 = {instancePath:instancePath+"/changes/" + i0+"/value",schemaPath:"defs.json#/$defs/quantity/pattern",keyword:"pattern",params:{pattern: "^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"},message:"must match pattern \""+"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$"+"\"",schema:"^(?:[AF]0 )?-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?(?: ?\\S.*)?$",parentSchema:schema118,data:data5};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
else {
const err18 = {instancePath:instancePath+"/changes/" + i0+"/value",schemaPath:"defs.json#/$defs/quantity/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema118.type,parentSchema:schema118,data:data5};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
if(data2.from !== undefined){
let data6 = data2.from;
if(typeof data6 === "string"){
if(!pattern18.test(data6)){
const err19 = {instancePath:instancePath+"/changes/" + i0+"/from",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data6};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
else {
const err20 = {instancePath:instancePath+"/changes/" + i0+"/from",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data6};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
if(data2.because !== undefined){
let data7 = data2.because;
if(typeof data7 === "string"){
if(func2(data7) > 2000){
const err21 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data7};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
if(func2(data7) < 1){
const err22 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data7};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
else {
const err23 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data7};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
if(data2.source !== undefined){
if(!(validate97(data2.source, {instancePath:instancePath+"/changes/" + i0+"/source",parentData:data2,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate97.errors : vErrors.concat(validate97.errors);
errors = vErrors.length;
}
}
if(data2.deviation !== undefined){
if(!(validate99(data2.deviation, {instancePath:instancePath+"/changes/" + i0+"/deviation",parentData:data2,parentDataProperty:"deviation",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate99.errors : vErrors.concat(validate99.errors);
errors = vErrors.length;
}
}
}
else {
const err24 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/0/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema215.properties.changes.items.oneOf[0].type,parentSchema:schema215.properties.changes.items.oneOf[0],data:data2};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
var props0 = true;
}
else if(tag0 === "interval"){
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.change === undefined){
const err25 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/1/required",keyword:"required",params:{missingProperty: "change"},message:"must have required property '"+"change"+"'",schema:schema215.properties.changes.items.oneOf[1].required,parentSchema:schema215.properties.changes.items.oneOf[1],data:data2};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
if(data2.task === undefined){
const err26 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/1/required",keyword:"required",params:{missingProperty: "task"},message:"must have required property '"+"task"+"'",schema:schema215.properties.changes.items.oneOf[1].required,parentSchema:schema215.properties.changes.items.oneOf[1],data:data2};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
if(data2.every === undefined){
const err27 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/1/required",keyword:"required",params:{missingProperty: "every"},message:"must have required property '"+"every"+"'",schema:schema215.properties.changes.items.oneOf[1].required,parentSchema:schema215.properties.changes.items.oneOf[1],data:data2};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
if(data2.source === undefined){
const err28 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/1/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema215.properties.changes.items.oneOf[1].required,parentSchema:schema215.properties.changes.items.oneOf[1],data:data2};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
if(data2.because === undefined){
const err29 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/1/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema215.properties.changes.items.oneOf[1].required,parentSchema:schema215.properties.changes.items.oneOf[1],data:data2};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
for(const key2 in data2){
if(!((((((key2 === "change") || (key2 === "task")) || (key2 === "every")) || (key2 === "because")) || (key2 === "source")) || (key2 === "deviation"))){
const err30 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/1/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key2},message:"must NOT have additional properties",schema:false,parentSchema:schema215.properties.changes.items.oneOf[1],data:data2};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
}
if(data2.change !== undefined){
let data10 = data2.change;
if("interval" !== data10){
const err31 = {instancePath:instancePath+"/changes/" + i0+"/change",schemaPath:"#/properties/changes/items/oneOf/1/properties/change/const",keyword:"const",params:{allowedValue: "interval"},message:"must be equal to constant",schema:"interval",parentSchema:schema215.properties.changes.items.oneOf[1].properties.change,data:data10};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
}
if(data2.task !== undefined){
let data11 = data2.task;
if(typeof data11 === "string"){
if(func2(data11) > 80){
const err32 = {instancePath:instancePath+"/changes/" + i0+"/task",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data11};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
if(!pattern4.test(data11)){
const err33 = {instancePath:instancePath+"/changes/" + i0+"/task",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data11};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
}
else {
const err34 = {instancePath:instancePath+"/changes/" + i0+"/task",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data11};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
}
if(data2.every !== undefined){
let data12 = data2.every;
if(typeof data12 === "string"){
if(func2(data12) > 60){
const err35 = {instancePath:instancePath+"/changes/" + i0+"/every",schemaPath:"defs.json#/$defs/interval/maxLength",keyword:"maxLength",params:{limit: 60},message:"must NOT have more than 60 characters",schema:60,parentSchema:schema113,data:data12};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
if(func2(data12) < 1){
const err36 = {instancePath:instancePath+"/changes/" + i0+"/every",schemaPath:"defs.json#/$defs/interval/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema113,data:data12};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
}
}
else {
const err37 = {instancePath:instancePath+"/changes/" + i0+"/every",schemaPath:"defs.json#/$defs/interval/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema113.type,parentSchema:schema113,data:data12};
if(vErrors === null){
vErrors = [err37];
}
else {
vErrors.push(err37);
}
errors++;
}
}
if(data2.because !== undefined){
let data13 = data2.because;
if(typeof data13 === "string"){
if(func2(data13) > 2000){
const err38 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data13};
if(vErrors === null){
vErrors = [err38];
}
else {
vErrors.push(err38);
}
errors++;
}
if(func2(data13) < 1){
const err39 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data13};
if(vErrors === null){
vErrors = [err39];
}
else {
vErrors.push(err39);
}
errors++;
}
}
else {
const err40 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data13};
if(vErrors === null){
vErrors = [err40];
}
else {
vErrors.push(err40);
}
errors++;
}
}
if(data2.source !== undefined){
if(!(validate97(data2.source, {instancePath:instancePath+"/changes/" + i0+"/source",parentData:data2,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate97.errors : vErrors.concat(validate97.errors);
errors = vErrors.length;
}
}
if(data2.deviation !== undefined){
if(!(validate99(data2.deviation, {instancePath:instancePath+"/changes/" + i0+"/deviation",parentData:data2,parentDataProperty:"deviation",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate99.errors : vErrors.concat(validate99.errors);
errors = vErrors.length;
}
}
}
else {
const err41 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/1/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema215.properties.changes.items.oneOf[1].type,parentSchema:schema215.properties.changes.items.oneOf[1],data:data2};
if(vErrors === null){
vErrors = [err41];
}
else {
vErrors.push(err41);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "add-rule"){
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.change === undefined){
const err42 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/2/required",keyword:"required",params:{missingProperty: "change"},message:"must have required property '"+"change"+"'",schema:schema215.properties.changes.items.oneOf[2].required,parentSchema:schema215.properties.changes.items.oneOf[2],data:data2};
if(vErrors === null){
vErrors = [err42];
}
else {
vErrors.push(err42);
}
errors++;
}
if(data2.decision === undefined){
const err43 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/2/required",keyword:"required",params:{missingProperty: "decision"},message:"must have required property '"+"decision"+"'",schema:schema215.properties.changes.items.oneOf[2].required,parentSchema:schema215.properties.changes.items.oneOf[2],data:data2};
if(vErrors === null){
vErrors = [err43];
}
else {
vErrors.push(err43);
}
errors++;
}
if(data2.rule === undefined){
const err44 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/2/required",keyword:"required",params:{missingProperty: "rule"},message:"must have required property '"+"rule"+"'",schema:schema215.properties.changes.items.oneOf[2].required,parentSchema:schema215.properties.changes.items.oneOf[2],data:data2};
if(vErrors === null){
vErrors = [err44];
}
else {
vErrors.push(err44);
}
errors++;
}
if(data2.because === undefined){
const err45 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/2/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema215.properties.changes.items.oneOf[2].required,parentSchema:schema215.properties.changes.items.oneOf[2],data:data2};
if(vErrors === null){
vErrors = [err45];
}
else {
vErrors.push(err45);
}
errors++;
}
for(const key3 in data2){
if(!((((((key3 === "change") || (key3 === "decision")) || (key3 === "rule")) || (key3 === "because")) || (key3 === "source")) || (key3 === "deviation"))){
const err46 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/2/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key3},message:"must NOT have additional properties",schema:false,parentSchema:schema215.properties.changes.items.oneOf[2],data:data2};
if(vErrors === null){
vErrors = [err46];
}
else {
vErrors.push(err46);
}
errors++;
}
}
if(data2.change !== undefined){
let data16 = data2.change;
if("add-rule" !== data16){
const err47 = {instancePath:instancePath+"/changes/" + i0+"/change",schemaPath:"#/properties/changes/items/oneOf/2/properties/change/const",keyword:"const",params:{allowedValue: "add-rule"},message:"must be equal to constant",schema:"add-rule",parentSchema:schema215.properties.changes.items.oneOf[2].properties.change,data:data16};
if(vErrors === null){
vErrors = [err47];
}
else {
vErrors.push(err47);
}
errors++;
}
}
if(data2.decision !== undefined){
let data17 = data2.decision;
if(typeof data17 === "string"){
if(func2(data17) > 80){
const err48 = {instancePath:instancePath+"/changes/" + i0+"/decision",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data17};
if(vErrors === null){
vErrors = [err48];
}
else {
vErrors.push(err48);
}
errors++;
}
if(!pattern4.test(data17)){
const err49 = {instancePath:instancePath+"/changes/" + i0+"/decision",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data17};
if(vErrors === null){
vErrors = [err49];
}
else {
vErrors.push(err49);
}
errors++;
}
}
else {
const err50 = {instancePath:instancePath+"/changes/" + i0+"/decision",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data17};
if(vErrors === null){
vErrors = [err50];
}
else {
vErrors.push(err50);
}
errors++;
}
}
if(data2.rule !== undefined){
if(!(validate104(data2.rule, {instancePath:instancePath+"/changes/" + i0+"/rule",parentData:data2,parentDataProperty:"rule",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate104.errors : vErrors.concat(validate104.errors);
errors = vErrors.length;
}
}
if(data2.because !== undefined){
let data19 = data2.because;
if(typeof data19 === "string"){
if(func2(data19) > 2000){
const err51 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data19};
if(vErrors === null){
vErrors = [err51];
}
else {
vErrors.push(err51);
}
errors++;
}
if(func2(data19) < 1){
const err52 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data19};
if(vErrors === null){
vErrors = [err52];
}
else {
vErrors.push(err52);
}
errors++;
}
}
else {
const err53 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data19};
if(vErrors === null){
vErrors = [err53];
}
else {
vErrors.push(err53);
}
errors++;
}
}
if(data2.source !== undefined){
if(!(validate97(data2.source, {instancePath:instancePath+"/changes/" + i0+"/source",parentData:data2,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate97.errors : vErrors.concat(validate97.errors);
errors = vErrors.length;
}
}
if(data2.deviation !== undefined){
if(!(validate99(data2.deviation, {instancePath:instancePath+"/changes/" + i0+"/deviation",parentData:data2,parentDataProperty:"deviation",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate99.errors : vErrors.concat(validate99.errors);
errors = vErrors.length;
}
}
}
else {
const err54 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/2/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema215.properties.changes.items.oneOf[2].type,parentSchema:schema215.properties.changes.items.oneOf[2],data:data2};
if(vErrors === null){
vErrors = [err54];
}
else {
vErrors.push(err54);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "replace-rule"){
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.change === undefined){
const err55 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/3/required",keyword:"required",params:{missingProperty: "change"},message:"must have required property '"+"change"+"'",schema:schema215.properties.changes.items.oneOf[3].required,parentSchema:schema215.properties.changes.items.oneOf[3],data:data2};
if(vErrors === null){
vErrors = [err55];
}
else {
vErrors.push(err55);
}
errors++;
}
if(data2.decision === undefined){
const err56 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/3/required",keyword:"required",params:{missingProperty: "decision"},message:"must have required property '"+"decision"+"'",schema:schema215.properties.changes.items.oneOf[3].required,parentSchema:schema215.properties.changes.items.oneOf[3],data:data2};
if(vErrors === null){
vErrors = [err56];
}
else {
vErrors.push(err56);
}
errors++;
}
if(data2.rule === undefined){
const err57 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/3/required",keyword:"required",params:{missingProperty: "rule"},message:"must have required property '"+"rule"+"'",schema:schema215.properties.changes.items.oneOf[3].required,parentSchema:schema215.properties.changes.items.oneOf[3],data:data2};
if(vErrors === null){
vErrors = [err57];
}
else {
vErrors.push(err57);
}
errors++;
}
if(data2.because === undefined){
const err58 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/3/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema215.properties.changes.items.oneOf[3].required,parentSchema:schema215.properties.changes.items.oneOf[3],data:data2};
if(vErrors === null){
vErrors = [err58];
}
else {
vErrors.push(err58);
}
errors++;
}
for(const key4 in data2){
if(!((((((key4 === "change") || (key4 === "decision")) || (key4 === "rule")) || (key4 === "because")) || (key4 === "source")) || (key4 === "deviation"))){
const err59 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/3/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key4},message:"must NOT have additional properties",schema:false,parentSchema:schema215.properties.changes.items.oneOf[3],data:data2};
if(vErrors === null){
vErrors = [err59];
}
else {
vErrors.push(err59);
}
errors++;
}
}
if(data2.change !== undefined){
let data22 = data2.change;
if("replace-rule" !== data22){
const err60 = {instancePath:instancePath+"/changes/" + i0+"/change",schemaPath:"#/properties/changes/items/oneOf/3/properties/change/const",keyword:"const",params:{allowedValue: "replace-rule"},message:"must be equal to constant",schema:"replace-rule",parentSchema:schema215.properties.changes.items.oneOf[3].properties.change,data:data22};
if(vErrors === null){
vErrors = [err60];
}
else {
vErrors.push(err60);
}
errors++;
}
}
if(data2.decision !== undefined){
let data23 = data2.decision;
if(typeof data23 === "string"){
if(func2(data23) > 80){
const err61 = {instancePath:instancePath+"/changes/" + i0+"/decision",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data23};
if(vErrors === null){
vErrors = [err61];
}
else {
vErrors.push(err61);
}
errors++;
}
if(!pattern4.test(data23)){
const err62 = {instancePath:instancePath+"/changes/" + i0+"/decision",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data23};
if(vErrors === null){
vErrors = [err62];
}
else {
vErrors.push(err62);
}
errors++;
}
}
else {
const err63 = {instancePath:instancePath+"/changes/" + i0+"/decision",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data23};
if(vErrors === null){
vErrors = [err63];
}
else {
vErrors.push(err63);
}
errors++;
}
}
if(data2.rule !== undefined){
if(!(validate104(data2.rule, {instancePath:instancePath+"/changes/" + i0+"/rule",parentData:data2,parentDataProperty:"rule",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate104.errors : vErrors.concat(validate104.errors);
errors = vErrors.length;
}
}
if(data2.because !== undefined){
let data25 = data2.because;
if(typeof data25 === "string"){
if(func2(data25) > 2000){
const err64 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data25};
if(vErrors === null){
vErrors = [err64];
}
else {
vErrors.push(err64);
}
errors++;
}
if(func2(data25) < 1){
const err65 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data25};
if(vErrors === null){
vErrors = [err65];
}
else {
vErrors.push(err65);
}
errors++;
}
}
else {
const err66 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data25};
if(vErrors === null){
vErrors = [err66];
}
else {
vErrors.push(err66);
}
errors++;
}
}
if(data2.source !== undefined){
if(!(validate97(data2.source, {instancePath:instancePath+"/changes/" + i0+"/source",parentData:data2,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate97.errors : vErrors.concat(validate97.errors);
errors = vErrors.length;
}
}
if(data2.deviation !== undefined){
if(!(validate99(data2.deviation, {instancePath:instancePath+"/changes/" + i0+"/deviation",parentData:data2,parentDataProperty:"deviation",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate99.errors : vErrors.concat(validate99.errors);
errors = vErrors.length;
}
}
}
else {
const err67 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/3/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema215.properties.changes.items.oneOf[3].type,parentSchema:schema215.properties.changes.items.oneOf[3],data:data2};
if(vErrors === null){
vErrors = [err67];
}
else {
vErrors.push(err67);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "retire-rule"){
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.change === undefined){
const err68 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/4/required",keyword:"required",params:{missingProperty: "change"},message:"must have required property '"+"change"+"'",schema:schema215.properties.changes.items.oneOf[4].required,parentSchema:schema215.properties.changes.items.oneOf[4],data:data2};
if(vErrors === null){
vErrors = [err68];
}
else {
vErrors.push(err68);
}
errors++;
}
if(data2.decision === undefined){
const err69 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/4/required",keyword:"required",params:{missingProperty: "decision"},message:"must have required property '"+"decision"+"'",schema:schema215.properties.changes.items.oneOf[4].required,parentSchema:schema215.properties.changes.items.oneOf[4],data:data2};
if(vErrors === null){
vErrors = [err69];
}
else {
vErrors.push(err69);
}
errors++;
}
if(data2.rule === undefined){
const err70 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/4/required",keyword:"required",params:{missingProperty: "rule"},message:"must have required property '"+"rule"+"'",schema:schema215.properties.changes.items.oneOf[4].required,parentSchema:schema215.properties.changes.items.oneOf[4],data:data2};
if(vErrors === null){
vErrors = [err70];
}
else {
vErrors.push(err70);
}
errors++;
}
if(data2.because === undefined){
const err71 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/4/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema215.properties.changes.items.oneOf[4].required,parentSchema:schema215.properties.changes.items.oneOf[4],data:data2};
if(vErrors === null){
vErrors = [err71];
}
else {
vErrors.push(err71);
}
errors++;
}
for(const key5 in data2){
if(!((((((key5 === "change") || (key5 === "decision")) || (key5 === "rule")) || (key5 === "because")) || (key5 === "source")) || (key5 === "deviation"))){
const err72 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/4/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key5},message:"must NOT have additional properties",schema:false,parentSchema:schema215.properties.changes.items.oneOf[4],data:data2};
if(vErrors === null){
vErrors = [err72];
}
else {
vErrors.push(err72);
}
errors++;
}
}
if(data2.change !== undefined){
let data28 = data2.change;
if("retire-rule" !== data28){
const err73 = {instancePath:instancePath+"/changes/" + i0+"/change",schemaPath:"#/properties/changes/items/oneOf/4/properties/change/const",keyword:"const",params:{allowedValue: "retire-rule"},message:"must be equal to constant",schema:"retire-rule",parentSchema:schema215.properties.changes.items.oneOf[4].properties.change,data:data28};
if(vErrors === null){
vErrors = [err73];
}
else {
vErrors.push(err73);
}
errors++;
}
}
if(data2.decision !== undefined){
let data29 = data2.decision;
if(typeof data29 === "string"){
if(func2(data29) > 80){
const err74 = {instancePath:instancePath+"/changes/" + i0+"/decision",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data29};
if(vErrors === null){
vErrors = [err74];
}
else {
vErrors.push(err74);
}
errors++;
}
if(!pattern4.test(data29)){
const err75 = {instancePath:instancePath+"/changes/" + i0+"/decision",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data29};
if(vErrors === null){
vErrors = [err75];
}
else {
vErrors.push(err75);
}
errors++;
}
}
else {
const err76 = {instancePath:instancePath+"/changes/" + i0+"/decision",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data29};
if(vErrors === null){
vErrors = [err76];
}
else {
vErrors.push(err76);
}
errors++;
}
}
if(data2.rule !== undefined){
let data30 = data2.rule;
if(typeof data30 === "string"){
if(func2(data30) > 80){
const err77 = {instancePath:instancePath+"/changes/" + i0+"/rule",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data30};
if(vErrors === null){
vErrors = [err77];
}
else {
vErrors.push(err77);
}
errors++;
}
if(!pattern4.test(data30)){
const err78 = {instancePath:instancePath+"/changes/" + i0+"/rule",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data30};
if(vErrors === null){
vErrors = [err78];
}
else {
vErrors.push(err78);
}
errors++;
}
}
else {
const err79 = {instancePath:instancePath+"/changes/" + i0+"/rule",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data30};
if(vErrors === null){
vErrors = [err79];
}
else {
vErrors.push(err79);
}
errors++;
}
}
if(data2.because !== undefined){
let data31 = data2.because;
if(typeof data31 === "string"){
if(func2(data31) > 2000){
const err80 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data31};
if(vErrors === null){
vErrors = [err80];
}
else {
vErrors.push(err80);
}
errors++;
}
if(func2(data31) < 1){
const err81 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data31};
if(vErrors === null){
vErrors = [err81];
}
else {
vErrors.push(err81);
}
errors++;
}
}
else {
const err82 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data31};
if(vErrors === null){
vErrors = [err82];
}
else {
vErrors.push(err82);
}
errors++;
}
}
if(data2.source !== undefined){
if(!(validate97(data2.source, {instancePath:instancePath+"/changes/" + i0+"/source",parentData:data2,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate97.errors : vErrors.concat(validate97.errors);
errors = vErrors.length;
}
}
if(data2.deviation !== undefined){
if(!(validate99(data2.deviation, {instancePath:instancePath+"/changes/" + i0+"/deviation",parentData:data2,parentDataProperty:"deviation",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate99.errors : vErrors.concat(validate99.errors);
errors = vErrors.length;
}
}
}
else {
const err83 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/4/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema215.properties.changes.items.oneOf[4].type,parentSchema:schema215.properties.changes.items.oneOf[4],data:data2};
if(vErrors === null){
vErrors = [err83];
}
else {
vErrors.push(err83);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "add-step"){
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.change === undefined){
const err84 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/5/required",keyword:"required",params:{missingProperty: "change"},message:"must have required property '"+"change"+"'",schema:schema215.properties.changes.items.oneOf[5].required,parentSchema:schema215.properties.changes.items.oneOf[5],data:data2};
if(vErrors === null){
vErrors = [err84];
}
else {
vErrors.push(err84);
}
errors++;
}
if(data2.procedure === undefined){
const err85 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/5/required",keyword:"required",params:{missingProperty: "procedure"},message:"must have required property '"+"procedure"+"'",schema:schema215.properties.changes.items.oneOf[5].required,parentSchema:schema215.properties.changes.items.oneOf[5],data:data2};
if(vErrors === null){
vErrors = [err85];
}
else {
vErrors.push(err85);
}
errors++;
}
if(data2.after === undefined){
const err86 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/5/required",keyword:"required",params:{missingProperty: "after"},message:"must have required property '"+"after"+"'",schema:schema215.properties.changes.items.oneOf[5].required,parentSchema:schema215.properties.changes.items.oneOf[5],data:data2};
if(vErrors === null){
vErrors = [err86];
}
else {
vErrors.push(err86);
}
errors++;
}
if(data2.step === undefined){
const err87 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/5/required",keyword:"required",params:{missingProperty: "step"},message:"must have required property '"+"step"+"'",schema:schema215.properties.changes.items.oneOf[5].required,parentSchema:schema215.properties.changes.items.oneOf[5],data:data2};
if(vErrors === null){
vErrors = [err87];
}
else {
vErrors.push(err87);
}
errors++;
}
if(data2.because === undefined){
const err88 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/5/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema215.properties.changes.items.oneOf[5].required,parentSchema:schema215.properties.changes.items.oneOf[5],data:data2};
if(vErrors === null){
vErrors = [err88];
}
else {
vErrors.push(err88);
}
errors++;
}
for(const key6 in data2){
if(!(((((((key6 === "change") || (key6 === "procedure")) || (key6 === "after")) || (key6 === "step")) || (key6 === "because")) || (key6 === "source")) || (key6 === "deviation"))){
const err89 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/5/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key6},message:"must NOT have additional properties",schema:false,parentSchema:schema215.properties.changes.items.oneOf[5],data:data2};
if(vErrors === null){
vErrors = [err89];
}
else {
vErrors.push(err89);
}
errors++;
}
}
if(data2.change !== undefined){
let data34 = data2.change;
if("add-step" !== data34){
const err90 = {instancePath:instancePath+"/changes/" + i0+"/change",schemaPath:"#/properties/changes/items/oneOf/5/properties/change/const",keyword:"const",params:{allowedValue: "add-step"},message:"must be equal to constant",schema:"add-step",parentSchema:schema215.properties.changes.items.oneOf[5].properties.change,data:data34};
if(vErrors === null){
vErrors = [err90];
}
else {
vErrors.push(err90);
}
errors++;
}
}
if(data2.procedure !== undefined){
let data35 = data2.procedure;
if(typeof data35 === "string"){
if(func2(data35) > 80){
const err91 = {instancePath:instancePath+"/changes/" + i0+"/procedure",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data35};
if(vErrors === null){
vErrors = [err91];
}
else {
vErrors.push(err91);
}
errors++;
}
if(!pattern4.test(data35)){
const err92 = {instancePath:instancePath+"/changes/" + i0+"/procedure",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data35};
if(vErrors === null){
vErrors = [err92];
}
else {
vErrors.push(err92);
}
errors++;
}
}
else {
const err93 = {instancePath:instancePath+"/changes/" + i0+"/procedure",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data35};
if(vErrors === null){
vErrors = [err93];
}
else {
vErrors.push(err93);
}
errors++;
}
}
if(data2.after !== undefined){
let data36 = data2.after;
if(typeof data36 === "string"){
if(func2(data36) > 80){
const err94 = {instancePath:instancePath+"/changes/" + i0+"/after",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data36};
if(vErrors === null){
vErrors = [err94];
}
else {
vErrors.push(err94);
}
errors++;
}
if(!pattern4.test(data36)){
const err95 = {instancePath:instancePath+"/changes/" + i0+"/after",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data36};
if(vErrors === null){
vErrors = [err95];
}
else {
vErrors.push(err95);
}
errors++;
}
}
else {
const err96 = {instancePath:instancePath+"/changes/" + i0+"/after",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data36};
if(vErrors === null){
vErrors = [err96];
}
else {
vErrors.push(err96);
}
errors++;
}
}
if(data2.step !== undefined){
if(!(validate117(data2.step, {instancePath:instancePath+"/changes/" + i0+"/step",parentData:data2,parentDataProperty:"step",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate117.errors : vErrors.concat(validate117.errors);
errors = vErrors.length;
}
}
if(data2.because !== undefined){
let data38 = data2.because;
if(typeof data38 === "string"){
if(func2(data38) > 2000){
const err97 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data38};
if(vErrors === null){
vErrors = [err97];
}
else {
vErrors.push(err97);
}
errors++;
}
if(func2(data38) < 1){
const err98 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data38};
if(vErrors === null){
vErrors = [err98];
}
else {
vErrors.push(err98);
}
errors++;
}
}
else {
const err99 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data38};
if(vErrors === null){
vErrors = [err99];
}
else {
vErrors.push(err99);
}
errors++;
}
}
if(data2.source !== undefined){
if(!(validate97(data2.source, {instancePath:instancePath+"/changes/" + i0+"/source",parentData:data2,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate97.errors : vErrors.concat(validate97.errors);
errors = vErrors.length;
}
}
if(data2.deviation !== undefined){
if(!(validate99(data2.deviation, {instancePath:instancePath+"/changes/" + i0+"/deviation",parentData:data2,parentDataProperty:"deviation",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate99.errors : vErrors.concat(validate99.errors);
errors = vErrors.length;
}
}
}
else {
const err100 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/5/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema215.properties.changes.items.oneOf[5].type,parentSchema:schema215.properties.changes.items.oneOf[5],data:data2};
if(vErrors === null){
vErrors = [err100];
}
else {
vErrors.push(err100);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "replace-step"){
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.change === undefined){
const err101 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/6/required",keyword:"required",params:{missingProperty: "change"},message:"must have required property '"+"change"+"'",schema:schema215.properties.changes.items.oneOf[6].required,parentSchema:schema215.properties.changes.items.oneOf[6],data:data2};
if(vErrors === null){
vErrors = [err101];
}
else {
vErrors.push(err101);
}
errors++;
}
if(data2.procedure === undefined){
const err102 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/6/required",keyword:"required",params:{missingProperty: "procedure"},message:"must have required property '"+"procedure"+"'",schema:schema215.properties.changes.items.oneOf[6].required,parentSchema:schema215.properties.changes.items.oneOf[6],data:data2};
if(vErrors === null){
vErrors = [err102];
}
else {
vErrors.push(err102);
}
errors++;
}
if(data2.step === undefined){
const err103 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/6/required",keyword:"required",params:{missingProperty: "step"},message:"must have required property '"+"step"+"'",schema:schema215.properties.changes.items.oneOf[6].required,parentSchema:schema215.properties.changes.items.oneOf[6],data:data2};
if(vErrors === null){
vErrors = [err103];
}
else {
vErrors.push(err103);
}
errors++;
}
if(data2.because === undefined){
const err104 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/6/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema215.properties.changes.items.oneOf[6].required,parentSchema:schema215.properties.changes.items.oneOf[6],data:data2};
if(vErrors === null){
vErrors = [err104];
}
else {
vErrors.push(err104);
}
errors++;
}
for(const key7 in data2){
if(!((((((key7 === "change") || (key7 === "procedure")) || (key7 === "step")) || (key7 === "because")) || (key7 === "source")) || (key7 === "deviation"))){
const err105 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/6/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key7},message:"must NOT have additional properties",schema:false,parentSchema:schema215.properties.changes.items.oneOf[6],data:data2};
if(vErrors === null){
vErrors = [err105];
}
else {
vErrors.push(err105);
}
errors++;
}
}
if(data2.change !== undefined){
let data41 = data2.change;
if("replace-step" !== data41){
const err106 = {instancePath:instancePath+"/changes/" + i0+"/change",schemaPath:"#/properties/changes/items/oneOf/6/properties/change/const",keyword:"const",params:{allowedValue: "replace-step"},message:"must be equal to constant",schema:"replace-step",parentSchema:schema215.properties.changes.items.oneOf[6].properties.change,data:data41};
if(vErrors === null){
vErrors = [err106];
}
else {
vErrors.push(err106);
}
errors++;
}
}
if(data2.procedure !== undefined){
let data42 = data2.procedure;
if(typeof data42 === "string"){
if(func2(data42) > 80){
const err107 = {instancePath:instancePath+"/changes/" + i0+"/procedure",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data42};
if(vErrors === null){
vErrors = [err107];
}
else {
vErrors.push(err107);
}
errors++;
}
if(!pattern4.test(data42)){
const err108 = {instancePath:instancePath+"/changes/" + i0+"/procedure",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data42};
if(vErrors === null){
vErrors = [err108];
}
else {
vErrors.push(err108);
}
errors++;
}
}
else {
const err109 = {instancePath:instancePath+"/changes/" + i0+"/procedure",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data42};
if(vErrors === null){
vErrors = [err109];
}
else {
vErrors.push(err109);
}
errors++;
}
}
if(data2.step !== undefined){
if(!(validate117(data2.step, {instancePath:instancePath+"/changes/" + i0+"/step",parentData:data2,parentDataProperty:"step",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate117.errors : vErrors.concat(validate117.errors);
errors = vErrors.length;
}
}
if(data2.because !== undefined){
let data44 = data2.because;
if(typeof data44 === "string"){
if(func2(data44) > 2000){
const err110 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data44};
if(vErrors === null){
vErrors = [err110];
}
else {
vErrors.push(err110);
}
errors++;
}
if(func2(data44) < 1){
const err111 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data44};
if(vErrors === null){
vErrors = [err111];
}
else {
vErrors.push(err111);
}
errors++;
}
}
else {
const err112 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data44};
if(vErrors === null){
vErrors = [err112];
}
else {
vErrors.push(err112);
}
errors++;
}
}
if(data2.source !== undefined){
if(!(validate97(data2.source, {instancePath:instancePath+"/changes/" + i0+"/source",parentData:data2,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate97.errors : vErrors.concat(validate97.errors);
errors = vErrors.length;
}
}
if(data2.deviation !== undefined){
if(!(validate99(data2.deviation, {instancePath:instancePath+"/changes/" + i0+"/deviation",parentData:data2,parentDataProperty:"deviation",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate99.errors : vErrors.concat(validate99.errors);
errors = vErrors.length;
}
}
}
else {
const err113 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/6/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema215.properties.changes.items.oneOf[6].type,parentSchema:schema215.properties.changes.items.oneOf[6],data:data2};
if(vErrors === null){
vErrors = [err113];
}
else {
vErrors.push(err113);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "add-point"){
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.change === undefined){
const err114 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/7/required",keyword:"required",params:{missingProperty: "change"},message:"must have required property '"+"change"+"'",schema:schema215.properties.changes.items.oneOf[7].required,parentSchema:schema215.properties.changes.items.oneOf[7],data:data2};
if(vErrors === null){
vErrors = [err114];
}
else {
vErrors.push(err114);
}
errors++;
}
if(data2.policy === undefined){
const err115 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/7/required",keyword:"required",params:{missingProperty: "policy"},message:"must have required property '"+"policy"+"'",schema:schema215.properties.changes.items.oneOf[7].required,parentSchema:schema215.properties.changes.items.oneOf[7],data:data2};
if(vErrors === null){
vErrors = [err115];
}
else {
vErrors.push(err115);
}
errors++;
}
if(data2.after === undefined){
const err116 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/7/required",keyword:"required",params:{missingProperty: "after"},message:"must have required property '"+"after"+"'",schema:schema215.properties.changes.items.oneOf[7].required,parentSchema:schema215.properties.changes.items.oneOf[7],data:data2};
if(vErrors === null){
vErrors = [err116];
}
else {
vErrors.push(err116);
}
errors++;
}
if(data2.point === undefined){
const err117 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/7/required",keyword:"required",params:{missingProperty: "point"},message:"must have required property '"+"point"+"'",schema:schema215.properties.changes.items.oneOf[7].required,parentSchema:schema215.properties.changes.items.oneOf[7],data:data2};
if(vErrors === null){
vErrors = [err117];
}
else {
vErrors.push(err117);
}
errors++;
}
if(data2.because === undefined){
const err118 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/7/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema215.properties.changes.items.oneOf[7].required,parentSchema:schema215.properties.changes.items.oneOf[7],data:data2};
if(vErrors === null){
vErrors = [err118];
}
else {
vErrors.push(err118);
}
errors++;
}
for(const key8 in data2){
if(!(((((((key8 === "change") || (key8 === "policy")) || (key8 === "after")) || (key8 === "point")) || (key8 === "because")) || (key8 === "source")) || (key8 === "deviation"))){
const err119 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/7/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key8},message:"must NOT have additional properties",schema:false,parentSchema:schema215.properties.changes.items.oneOf[7],data:data2};
if(vErrors === null){
vErrors = [err119];
}
else {
vErrors.push(err119);
}
errors++;
}
}
if(data2.change !== undefined){
let data47 = data2.change;
if("add-point" !== data47){
const err120 = {instancePath:instancePath+"/changes/" + i0+"/change",schemaPath:"#/properties/changes/items/oneOf/7/properties/change/const",keyword:"const",params:{allowedValue: "add-point"},message:"must be equal to constant",schema:"add-point",parentSchema:schema215.properties.changes.items.oneOf[7].properties.change,data:data47};
if(vErrors === null){
vErrors = [err120];
}
else {
vErrors.push(err120);
}
errors++;
}
}
if(data2.policy !== undefined){
let data48 = data2.policy;
if(typeof data48 === "string"){
if(func2(data48) > 80){
const err121 = {instancePath:instancePath+"/changes/" + i0+"/policy",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data48};
if(vErrors === null){
vErrors = [err121];
}
else {
vErrors.push(err121);
}
errors++;
}
if(!pattern4.test(data48)){
const err122 = {instancePath:instancePath+"/changes/" + i0+"/policy",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data48};
if(vErrors === null){
vErrors = [err122];
}
else {
vErrors.push(err122);
}
errors++;
}
}
else {
const err123 = {instancePath:instancePath+"/changes/" + i0+"/policy",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data48};
if(vErrors === null){
vErrors = [err123];
}
else {
vErrors.push(err123);
}
errors++;
}
}
if(data2.after !== undefined){
let data49 = data2.after;
if(typeof data49 === "string"){
if(func2(data49) > 80){
const err124 = {instancePath:instancePath+"/changes/" + i0+"/after",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data49};
if(vErrors === null){
vErrors = [err124];
}
else {
vErrors.push(err124);
}
errors++;
}
if(!pattern4.test(data49)){
const err125 = {instancePath:instancePath+"/changes/" + i0+"/after",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data49};
if(vErrors === null){
vErrors = [err125];
}
else {
vErrors.push(err125);
}
errors++;
}
}
else {
const err126 = {instancePath:instancePath+"/changes/" + i0+"/after",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data49};
if(vErrors === null){
vErrors = [err126];
}
else {
vErrors.push(err126);
}
errors++;
}
}
if(data2.point !== undefined){
if(!(validate126(data2.point, {instancePath:instancePath+"/changes/" + i0+"/point",parentData:data2,parentDataProperty:"point",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate126.errors : vErrors.concat(validate126.errors);
errors = vErrors.length;
}
}
if(data2.because !== undefined){
let data51 = data2.because;
if(typeof data51 === "string"){
if(func2(data51) > 2000){
const err127 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data51};
if(vErrors === null){
vErrors = [err127];
}
else {
vErrors.push(err127);
}
errors++;
}
if(func2(data51) < 1){
const err128 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data51};
if(vErrors === null){
vErrors = [err128];
}
else {
vErrors.push(err128);
}
errors++;
}
}
else {
const err129 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data51};
if(vErrors === null){
vErrors = [err129];
}
else {
vErrors.push(err129);
}
errors++;
}
}
if(data2.source !== undefined){
if(!(validate97(data2.source, {instancePath:instancePath+"/changes/" + i0+"/source",parentData:data2,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate97.errors : vErrors.concat(validate97.errors);
errors = vErrors.length;
}
}
if(data2.deviation !== undefined){
if(!(validate99(data2.deviation, {instancePath:instancePath+"/changes/" + i0+"/deviation",parentData:data2,parentDataProperty:"deviation",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate99.errors : vErrors.concat(validate99.errors);
errors = vErrors.length;
}
}
}
else {
const err130 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/7/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema215.properties.changes.items.oneOf[7].type,parentSchema:schema215.properties.changes.items.oneOf[7],data:data2};
if(vErrors === null){
vErrors = [err130];
}
else {
vErrors.push(err130);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "replace-point"){
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.change === undefined){
const err131 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/8/required",keyword:"required",params:{missingProperty: "change"},message:"must have required property '"+"change"+"'",schema:schema215.properties.changes.items.oneOf[8].required,parentSchema:schema215.properties.changes.items.oneOf[8],data:data2};
if(vErrors === null){
vErrors = [err131];
}
else {
vErrors.push(err131);
}
errors++;
}
if(data2.policy === undefined){
const err132 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/8/required",keyword:"required",params:{missingProperty: "policy"},message:"must have required property '"+"policy"+"'",schema:schema215.properties.changes.items.oneOf[8].required,parentSchema:schema215.properties.changes.items.oneOf[8],data:data2};
if(vErrors === null){
vErrors = [err132];
}
else {
vErrors.push(err132);
}
errors++;
}
if(data2.point === undefined){
const err133 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/8/required",keyword:"required",params:{missingProperty: "point"},message:"must have required property '"+"point"+"'",schema:schema215.properties.changes.items.oneOf[8].required,parentSchema:schema215.properties.changes.items.oneOf[8],data:data2};
if(vErrors === null){
vErrors = [err133];
}
else {
vErrors.push(err133);
}
errors++;
}
if(data2.because === undefined){
const err134 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/8/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema215.properties.changes.items.oneOf[8].required,parentSchema:schema215.properties.changes.items.oneOf[8],data:data2};
if(vErrors === null){
vErrors = [err134];
}
else {
vErrors.push(err134);
}
errors++;
}
for(const key9 in data2){
if(!((((((key9 === "change") || (key9 === "policy")) || (key9 === "point")) || (key9 === "because")) || (key9 === "source")) || (key9 === "deviation"))){
const err135 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/8/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key9},message:"must NOT have additional properties",schema:false,parentSchema:schema215.properties.changes.items.oneOf[8],data:data2};
if(vErrors === null){
vErrors = [err135];
}
else {
vErrors.push(err135);
}
errors++;
}
}
if(data2.change !== undefined){
let data54 = data2.change;
if("replace-point" !== data54){
const err136 = {instancePath:instancePath+"/changes/" + i0+"/change",schemaPath:"#/properties/changes/items/oneOf/8/properties/change/const",keyword:"const",params:{allowedValue: "replace-point"},message:"must be equal to constant",schema:"replace-point",parentSchema:schema215.properties.changes.items.oneOf[8].properties.change,data:data54};
if(vErrors === null){
vErrors = [err136];
}
else {
vErrors.push(err136);
}
errors++;
}
}
if(data2.policy !== undefined){
let data55 = data2.policy;
if(typeof data55 === "string"){
if(func2(data55) > 80){
const err137 = {instancePath:instancePath+"/changes/" + i0+"/policy",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data55};
if(vErrors === null){
vErrors = [err137];
}
else {
vErrors.push(err137);
}
errors++;
}
if(!pattern4.test(data55)){
const err138 = {instancePath:instancePath+"/changes/" + i0+"/policy",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data55};
if(vErrors === null){
vErrors = [err138];
}
else {
vErrors.push(err138);
}
errors++;
}
}
else {
const err139 = {instancePath:instancePath+"/changes/" + i0+"/policy",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data55};
if(vErrors === null){
vErrors = [err139];
}
else {
vErrors.push(err139);
}
errors++;
}
}
if(data2.point !== undefined){
if(!(validate126(data2.point, {instancePath:instancePath+"/changes/" + i0+"/point",parentData:data2,parentDataProperty:"point",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate126.errors : vErrors.concat(validate126.errors);
errors = vErrors.length;
}
}
if(data2.because !== undefined){
let data57 = data2.because;
if(typeof data57 === "string"){
if(func2(data57) > 2000){
const err140 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data57};
if(vErrors === null){
vErrors = [err140];
}
else {
vErrors.push(err140);
}
errors++;
}
if(func2(data57) < 1){
const err141 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data57};
if(vErrors === null){
vErrors = [err141];
}
else {
vErrors.push(err141);
}
errors++;
}
}
else {
const err142 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data57};
if(vErrors === null){
vErrors = [err142];
}
else {
vErrors.push(err142);
}
errors++;
}
}
if(data2.source !== undefined){
if(!(validate97(data2.source, {instancePath:instancePath+"/changes/" + i0+"/source",parentData:data2,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate97.errors : vErrors.concat(validate97.errors);
errors = vErrors.length;
}
}
if(data2.deviation !== undefined){
if(!(validate99(data2.deviation, {instancePath:instancePath+"/changes/" + i0+"/deviation",parentData:data2,parentDataProperty:"deviation",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate99.errors : vErrors.concat(validate99.errors);
errors = vErrors.length;
}
}
}
else {
const err143 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/8/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema215.properties.changes.items.oneOf[8].type,parentSchema:schema215.properties.changes.items.oneOf[8],data:data2};
if(vErrors === null){
vErrors = [err143];
}
else {
vErrors.push(err143);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else if(tag0 === "term"){
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.change === undefined){
const err144 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/9/required",keyword:"required",params:{missingProperty: "change"},message:"must have required property '"+"change"+"'",schema:schema215.properties.changes.items.oneOf[9].required,parentSchema:schema215.properties.changes.items.oneOf[9],data:data2};
if(vErrors === null){
vErrors = [err144];
}
else {
vErrors.push(err144);
}
errors++;
}
if(data2.term === undefined){
const err145 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/9/required",keyword:"required",params:{missingProperty: "term"},message:"must have required property '"+"term"+"'",schema:schema215.properties.changes.items.oneOf[9].required,parentSchema:schema215.properties.changes.items.oneOf[9],data:data2};
if(vErrors === null){
vErrors = [err145];
}
else {
vErrors.push(err145);
}
errors++;
}
if(data2.label === undefined){
const err146 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/9/required",keyword:"required",params:{missingProperty: "label"},message:"must have required property '"+"label"+"'",schema:schema215.properties.changes.items.oneOf[9].required,parentSchema:schema215.properties.changes.items.oneOf[9],data:data2};
if(vErrors === null){
vErrors = [err146];
}
else {
vErrors.push(err146);
}
errors++;
}
if(data2.because === undefined){
const err147 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/9/required",keyword:"required",params:{missingProperty: "because"},message:"must have required property '"+"because"+"'",schema:schema215.properties.changes.items.oneOf[9].required,parentSchema:schema215.properties.changes.items.oneOf[9],data:data2};
if(vErrors === null){
vErrors = [err147];
}
else {
vErrors.push(err147);
}
errors++;
}
for(const key10 in data2){
if(!(((((((key10 === "change") || (key10 === "term")) || (key10 === "label")) || (key10 === "plural")) || (key10 === "definition")) || (key10 === "because")) || (key10 === "source"))){
const err148 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/9/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key10},message:"must NOT have additional properties",schema:false,parentSchema:schema215.properties.changes.items.oneOf[9],data:data2};
if(vErrors === null){
vErrors = [err148];
}
else {
vErrors.push(err148);
}
errors++;
}
}
if(data2.change !== undefined){
let data60 = data2.change;
if("term" !== data60){
const err149 = {instancePath:instancePath+"/changes/" + i0+"/change",schemaPath:"#/properties/changes/items/oneOf/9/properties/change/const",keyword:"const",params:{allowedValue: "term"},message:"must be equal to constant",schema:"term",parentSchema:schema215.properties.changes.items.oneOf[9].properties.change,data:data60};
if(vErrors === null){
vErrors = [err149];
}
else {
vErrors.push(err149);
}
errors++;
}
}
if(data2.term !== undefined){
let data61 = data2.term;
if(typeof data61 === "string"){
if(func2(data61) > 80){
const err150 = {instancePath:instancePath+"/changes/" + i0+"/term",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data61};
if(vErrors === null){
vErrors = [err150];
}
else {
vErrors.push(err150);
}
errors++;
}
if(!pattern4.test(data61)){
const err151 = {instancePath:instancePath+"/changes/" + i0+"/term",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data61};
if(vErrors === null){
vErrors = [err151];
}
else {
vErrors.push(err151);
}
errors++;
}
}
else {
const err152 = {instancePath:instancePath+"/changes/" + i0+"/term",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data61};
if(vErrors === null){
vErrors = [err152];
}
else {
vErrors.push(err152);
}
errors++;
}
}
if(data2.label !== undefined){
let data62 = data2.label;
if(typeof data62 === "string"){
if(func2(data62) > 120){
const err153 = {instancePath:instancePath+"/changes/" + i0+"/label",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data62};
if(vErrors === null){
vErrors = [err153];
}
else {
vErrors.push(err153);
}
errors++;
}
if(func2(data62) < 1){
const err154 = {instancePath:instancePath+"/changes/" + i0+"/label",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data62};
if(vErrors === null){
vErrors = [err154];
}
else {
vErrors.push(err154);
}
errors++;
}
}
else {
const err155 = {instancePath:instancePath+"/changes/" + i0+"/label",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data62};
if(vErrors === null){
vErrors = [err155];
}
else {
vErrors.push(err155);
}
errors++;
}
}
if(data2.plural !== undefined){
let data63 = data2.plural;
if(typeof data63 === "string"){
if(func2(data63) > 120){
const err156 = {instancePath:instancePath+"/changes/" + i0+"/plural",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data63};
if(vErrors === null){
vErrors = [err156];
}
else {
vErrors.push(err156);
}
errors++;
}
if(func2(data63) < 1){
const err157 = {instancePath:instancePath+"/changes/" + i0+"/plural",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data63};
if(vErrors === null){
vErrors = [err157];
}
else {
vErrors.push(err157);
}
errors++;
}
}
else {
const err158 = {instancePath:instancePath+"/changes/" + i0+"/plural",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data63};
if(vErrors === null){
vErrors = [err158];
}
else {
vErrors.push(err158);
}
errors++;
}
}
if(data2.definition !== undefined){
let data64 = data2.definition;
if(typeof data64 === "string"){
if(func2(data64) > 2000){
const err159 = {instancePath:instancePath+"/changes/" + i0+"/definition",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data64};
if(vErrors === null){
vErrors = [err159];
}
else {
vErrors.push(err159);
}
errors++;
}
if(func2(data64) < 1){
const err160 = {instancePath:instancePath+"/changes/" + i0+"/definition",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data64};
if(vErrors === null){
vErrors = [err160];
}
else {
vErrors.push(err160);
}
errors++;
}
}
else {
const err161 = {instancePath:instancePath+"/changes/" + i0+"/definition",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data64};
if(vErrors === null){
vErrors = [err161];
}
else {
vErrors.push(err161);
}
errors++;
}
}
if(data2.because !== undefined){
let data65 = data2.because;
if(typeof data65 === "string"){
if(func2(data65) > 2000){
const err162 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data65};
if(vErrors === null){
vErrors = [err162];
}
else {
vErrors.push(err162);
}
errors++;
}
if(func2(data65) < 1){
const err163 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data65};
if(vErrors === null){
vErrors = [err163];
}
else {
vErrors.push(err163);
}
errors++;
}
}
else {
const err164 = {instancePath:instancePath+"/changes/" + i0+"/because",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data65};
if(vErrors === null){
vErrors = [err164];
}
else {
vErrors.push(err164);
}
errors++;
}
}
if(data2.source !== undefined){
if(!(validate97(data2.source, {instancePath:instancePath+"/changes/" + i0+"/source",parentData:data2,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate97.errors : vErrors.concat(validate97.errors);
errors = vErrors.length;
}
}
}
else {
const err165 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/oneOf/9/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema215.properties.changes.items.oneOf[9].type,parentSchema:schema215.properties.changes.items.oneOf[9],data:data2};
if(vErrors === null){
vErrors = [err165];
}
else {
vErrors.push(err165);
}
errors++;
}
if(props0 !== true){
props0 = true;
}
}
else {
const err166 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/discriminator",keyword:"discriminator",params:{error: "mapping", tag: "change", tagValue: tag0},message:"value of tag \"change\" must be in oneOf",schema:schema215.properties.changes.items.discriminator,parentSchema:schema215.properties.changes.items,data:data2};
if(vErrors === null){
vErrors = [err166];
}
else {
vErrors.push(err166);
}
errors++;
}
}
else {
const err167 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/discriminator",keyword:"discriminator",params:{error: "tag", tag: "change", tagValue: tag0},message:"tag \"change\" must be string",schema:schema215.properties.changes.items.discriminator,parentSchema:schema215.properties.changes.items,data:data2};
if(vErrors === null){
vErrors = [err167];
}
else {
vErrors.push(err167);
}
errors++;
}
}
else {
const err168 = {instancePath:instancePath+"/changes/" + i0,schemaPath:"#/properties/changes/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema215.properties.changes.items.type,parentSchema:schema215.properties.changes.items,data:data2};
if(vErrors === null){
vErrors = [err168];
}
else {
vErrors.push(err168);
}
errors++;
}
}
}
else {
const err169 = {instancePath:instancePath+"/changes",schemaPath:"#/properties/changes/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema215.properties.changes.type,parentSchema:schema215.properties.changes,data:data1};
if(vErrors === null){
vErrors = [err169];
}
else {
vErrors.push(err169);
}
errors++;
}
}
}
else {
const err170 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema215.type,parentSchema:schema215,data};
if(vErrors === null){
vErrors = [err170];
}
else {
vErrors.push(err170);
}
errors++;
}
validate96.errors = vErrors;
return errors === 0;
}
validate96.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_pack = validate136;
const schema276 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"pack.json","title":"Pack","description":"The first document of a folder of rules: what it is, what it builds on, and for where.","type":"object","additionalProperties":false,"required":["kind","id","version","title","licence","effective","about"],"properties":{"kind":{"const":"pack","description":"The kind of document; it picks this schema."},"id":{"$ref":"defs.json#/$defs/id"},"version":{"type":"string","minLength":1,"description":"SemVer version, such as 1.2.0."},"title":{"$ref":"defs.json#/$defs/label"},"region":{"type":"string","pattern":"^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$","description":"ISO 3166 code of the region it is for."},"extends":{"type":"object","additionalProperties":{"type":"string","minLength":1,"description":"SemVer range."},"propertyNames":{"$ref":"defs.json#/$defs/id"},"description":"The packs it builds on, with a SemVer range each."},"licence":{"type":"string","minLength":1,"description":"SPDX identifier."},"effective":{"$ref":"defs.json#/$defs/date"},"about":{"$ref":"defs.json#/$defs/text","description":"What the pack is for and what it does not cover."},"print":{"type":"object","additionalProperties":false,"required":[],"properties":{"paper":{"enum":["a4","letter"]},"language":{"$ref":"defs.json#/$defs/language"},"also":{"type":"object","minProperties":1,"additionalProperties":{"type":"string","minLength":1},"description":"A second unit that is printed in brackets, by the unit it stands behind: `mg/L CaCO3: °dH`."}},"description":"How manuals of this region are printed."},"look-again-after":{"$ref":"defs.json#/$defs/interval","description":"How long a look at a source counts: a value that was not compared with its source since then is listed."}}};

function validate136(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="pack.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate136.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema276.required,parentSchema:schema276,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.id === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema276.required,parentSchema:schema276,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data.version === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "version"},message:"must have required property '"+"version"+"'",schema:schema276.required,parentSchema:schema276,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
if(data.title === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema276.required,parentSchema:schema276,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(data.licence === undefined){
const err4 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "licence"},message:"must have required property '"+"licence"+"'",schema:schema276.required,parentSchema:schema276,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(data.effective === undefined){
const err5 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "effective"},message:"must have required property '"+"effective"+"'",schema:schema276.required,parentSchema:schema276,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(data.about === undefined){
const err6 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "about"},message:"must have required property '"+"about"+"'",schema:schema276.required,parentSchema:schema276,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
for(const key0 in data){
if(!(func1.call(schema276.properties, key0))){
const err7 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema276,data};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("pack" !== data0){
const err8 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "pack"},message:"must be equal to constant",schema:"pack",parentSchema:schema276.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.id !== undefined){
let data1 = data.id;
if(typeof data1 === "string"){
if(func2(data1) > 80){
const err9 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(!pattern4.test(data1)){
const err10 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
else {
const err11 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.version !== undefined){
let data2 = data.version;
if(typeof data2 === "string"){
if(func2(data2) < 1){
const err12 = {instancePath:instancePath+"/version",schemaPath:"#/properties/version/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema276.properties.version,data:data2};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
else {
const err13 = {instancePath:instancePath+"/version",schemaPath:"#/properties/version/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema276.properties.version.type,parentSchema:schema276.properties.version,data:data2};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
if(data.title !== undefined){
let data3 = data.title;
if(typeof data3 === "string"){
if(func2(data3) > 120){
const err14 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
if(func2(data3) < 1){
const err15 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
}
else {
const err16 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
if(data.region !== undefined){
let data4 = data.region;
if(typeof data4 === "string"){
if(!pattern16.test(data4)){
const err17 = {instancePath:instancePath+"/region",schemaPath:"#/properties/region/pattern",keyword:"pattern",params:{pattern: "^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$"},message:"must match pattern \""+"^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$"+"\"",schema:"^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$",parentSchema:schema276.properties.region,data:data4};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
else {
const err18 = {instancePath:instancePath+"/region",schemaPath:"#/properties/region/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema276.properties.region.type,parentSchema:schema276.properties.region,data:data4};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
if(data.extends !== undefined){
let data5 = data.extends;
if(data5 && typeof data5 == "object" && !Array.isArray(data5)){
for(const key1 in data5){
const _errs15 = errors;
if(typeof key1 === "string"){
if(func2(key1) > 80){
const err19 = {instancePath:instancePath+"/extends",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
if(!pattern4.test(key1)){
const err20 = {instancePath:instancePath+"/extends",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
else {
const err21 = {instancePath:instancePath+"/extends",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
var valid3 = _errs15 === errors;
if(!valid3){
const err22 = {instancePath:instancePath+"/extends",schemaPath:"#/properties/extends/propertyNames",keyword:"propertyNames",params:{propertyName: key1},message:"property name must be valid",schema:schema276.properties.extends.propertyNames,parentSchema:schema276.properties.extends,data:data5};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
for(const key2 in data5){
let data6 = data5[key2];
if(typeof data6 === "string"){
if(func2(data6) < 1){
const err23 = {instancePath:instancePath+"/extends/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/extends/additionalProperties/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema276.properties.extends.additionalProperties,data:data6};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
else {
const err24 = {instancePath:instancePath+"/extends/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/extends/additionalProperties/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema276.properties.extends.additionalProperties.type,parentSchema:schema276.properties.extends.additionalProperties,data:data6};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
}
else {
const err25 = {instancePath:instancePath+"/extends",schemaPath:"#/properties/extends/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema276.properties.extends.type,parentSchema:schema276.properties.extends,data:data5};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
}
if(data.licence !== undefined){
let data7 = data.licence;
if(typeof data7 === "string"){
if(func2(data7) < 1){
const err26 = {instancePath:instancePath+"/licence",schemaPath:"#/properties/licence/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema276.properties.licence,data:data7};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
else {
const err27 = {instancePath:instancePath+"/licence",schemaPath:"#/properties/licence/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema276.properties.licence.type,parentSchema:schema276.properties.licence,data:data7};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
}
if(data.effective !== undefined){
let data8 = data.effective;
if(typeof data8 === "string"){
if(!pattern18.test(data8)){
const err28 = {instancePath:instancePath+"/effective",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data8};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
}
else {
const err29 = {instancePath:instancePath+"/effective",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data8};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
}
if(data.about !== undefined){
let data9 = data.about;
if(typeof data9 === "string"){
if(func2(data9) > 2000){
const err30 = {instancePath:instancePath+"/about",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data9};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
if(func2(data9) < 1){
const err31 = {instancePath:instancePath+"/about",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data9};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
}
else {
const err32 = {instancePath:instancePath+"/about",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data9};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
}
if(data.print !== undefined){
let data10 = data.print;
if(data10 && typeof data10 == "object" && !Array.isArray(data10)){
for(const key3 in data10){
if(!(((key3 === "paper") || (key3 === "language")) || (key3 === "also"))){
const err33 = {instancePath:instancePath+"/print",schemaPath:"#/properties/print/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key3},message:"must NOT have additional properties",schema:false,parentSchema:schema276.properties.print,data:data10};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
}
if(data10.paper !== undefined){
let data11 = data10.paper;
if(!((data11 === "a4") || (data11 === "letter"))){
const err34 = {instancePath:instancePath+"/print/paper",schemaPath:"#/properties/print/properties/paper/enum",keyword:"enum",params:{allowedValues: schema276.properties.print.properties.paper.enum},message:"must be equal to one of the allowed values",schema:schema276.properties.print.properties.paper.enum,parentSchema:schema276.properties.print.properties.paper,data:data11};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
}
if(data10.language !== undefined){
let data12 = data10.language;
if(typeof data12 === "string"){
if(!pattern21.test(data12)){
const err35 = {instancePath:instancePath+"/print/language",schemaPath:"defs.json#/$defs/language/pattern",keyword:"pattern",params:{pattern: "^[a-z]{2}(?:-[A-Z]{2})?$"},message:"must match pattern \""+"^[a-z]{2}(?:-[A-Z]{2})?$"+"\"",schema:"^[a-z]{2}(?:-[A-Z]{2})?$",parentSchema:schema60,data:data12};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
}
else {
const err36 = {instancePath:instancePath+"/print/language",schemaPath:"defs.json#/$defs/language/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema60.type,parentSchema:schema60,data:data12};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
}
}
if(data10.also !== undefined){
let data13 = data10.also;
if(data13 && typeof data13 == "object" && !Array.isArray(data13)){
if(Object.keys(data13).length < 1){
const err37 = {instancePath:instancePath+"/print/also",schemaPath:"#/properties/print/properties/also/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema276.properties.print.properties.also,data:data13};
if(vErrors === null){
vErrors = [err37];
}
else {
vErrors.push(err37);
}
errors++;
}
for(const key4 in data13){
let data14 = data13[key4];
if(typeof data14 === "string"){
if(func2(data14) < 1){
const err38 = {instancePath:instancePath+"/print/also/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/print/properties/also/additionalProperties/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema276.properties.print.properties.also.additionalProperties,data:data14};
if(vErrors === null){
vErrors = [err38];
}
else {
vErrors.push(err38);
}
errors++;
}
}
else {
const err39 = {instancePath:instancePath+"/print/also/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/print/properties/also/additionalProperties/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema276.properties.print.properties.also.additionalProperties.type,parentSchema:schema276.properties.print.properties.also.additionalProperties,data:data14};
if(vErrors === null){
vErrors = [err39];
}
else {
vErrors.push(err39);
}
errors++;
}
}
}
else {
const err40 = {instancePath:instancePath+"/print/also",schemaPath:"#/properties/print/properties/also/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema276.properties.print.properties.also.type,parentSchema:schema276.properties.print.properties.also,data:data13};
if(vErrors === null){
vErrors = [err40];
}
else {
vErrors.push(err40);
}
errors++;
}
}
}
else {
const err41 = {instancePath:instancePath+"/print",schemaPath:"#/properties/print/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema276.properties.print.type,parentSchema:schema276.properties.print,data:data10};
if(vErrors === null){
vErrors = [err41];
}
else {
vErrors.push(err41);
}
errors++;
}
}
if(data["look-again-after"] !== undefined){
let data15 = data["look-again-after"];
if(typeof data15 === "string"){
if(func2(data15) > 60){
const err42 = {instancePath:instancePath+"/look-again-after",schemaPath:"defs.json#/$defs/interval/maxLength",keyword:"maxLength",params:{limit: 60},message:"must NOT have more than 60 characters",schema:60,parentSchema:schema113,data:data15};
if(vErrors === null){
vErrors = [err42];
}
else {
vErrors.push(err42);
}
errors++;
}
if(func2(data15) < 1){
const err43 = {instancePath:instancePath+"/look-again-after",schemaPath:"defs.json#/$defs/interval/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema113,data:data15};
if(vErrors === null){
vErrors = [err43];
}
else {
vErrors.push(err43);
}
errors++;
}
}
else {
const err44 = {instancePath:instancePath+"/look-again-after",schemaPath:"defs.json#/$defs/interval/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema113.type,parentSchema:schema113,data:data15};
if(vErrors === null){
vErrors = [err44];
}
else {
vErrors.push(err44);
}
errors++;
}
}
}
else {
const err45 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema276.type,parentSchema:schema276,data};
if(vErrors === null){
vErrors = [err45];
}
else {
vErrors.push(err45);
}
errors++;
}
validate136.errors = vErrors;
return errors === 0;
}
validate136.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_phrases = validate137;
const schema284 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"phrases.json","title":"Phrases","description":"Words that manuals are put together from: between the values of a condition, in heads and feet, on cards and forms.","type":"object","additionalProperties":false,"required":["kind"],"properties":{"kind":{"const":"phrases","description":"The kind of document; it picks this schema."},"phrases":{"type":"object","minProperties":1,"propertyNames":{"$ref":"defs.json#/$defs/id"},"additionalProperties":{"$ref":"defs.json#/$defs/text"},"description":"Phrases by id. `{name}` stands for a value."},"counted":{"type":"object","minProperties":1,"propertyNames":{"$ref":"defs.json#/$defs/id"},"additionalProperties":{"type":"object","additionalProperties":false,"required":["one","other"],"properties":{"one":{"$ref":"defs.json#/$defs/text","description":"Where the language counts `{count}` as one."},"other":{"$ref":"defs.json#/$defs/text","description":"Everywhere else."}}},"description":"Phrases that depend on the number `{count}`, by id."}}};

function validate137(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="phrases.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate137.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema284.required,parentSchema:schema284,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
for(const key0 in data){
if(!(((key0 === "kind") || (key0 === "phrases")) || (key0 === "counted"))){
const err1 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema284,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("phrases" !== data0){
const err2 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "phrases"},message:"must be equal to constant",schema:"phrases",parentSchema:schema284.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.phrases !== undefined){
let data1 = data.phrases;
if(data1 && typeof data1 == "object" && !Array.isArray(data1)){
if(Object.keys(data1).length < 1){
const err3 = {instancePath:instancePath+"/phrases",schemaPath:"#/properties/phrases/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema284.properties.phrases,data:data1};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
for(const key1 in data1){
const _errs5 = errors;
if(typeof key1 === "string"){
if(func2(key1) > 80){
const err4 = {instancePath:instancePath+"/phrases",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(!pattern4.test(key1)){
const err5 = {instancePath:instancePath+"/phrases",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
else {
const err6 = {instancePath:instancePath+"/phrases",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
var valid1 = _errs5 === errors;
if(!valid1){
const err7 = {instancePath:instancePath+"/phrases",schemaPath:"#/properties/phrases/propertyNames",keyword:"propertyNames",params:{propertyName: key1},message:"property name must be valid",schema:schema284.properties.phrases.propertyNames,parentSchema:schema284.properties.phrases,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
for(const key2 in data1){
let data2 = data1[key2];
if(typeof data2 === "string"){
if(func2(data2) > 2000){
const err8 = {instancePath:instancePath+"/phrases/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(func2(data2) < 1){
const err9 = {instancePath:instancePath+"/phrases/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
else {
const err10 = {instancePath:instancePath+"/phrases/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
}
else {
const err11 = {instancePath:instancePath+"/phrases",schemaPath:"#/properties/phrases/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema284.properties.phrases.type,parentSchema:schema284.properties.phrases,data:data1};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.counted !== undefined){
let data3 = data.counted;
if(data3 && typeof data3 == "object" && !Array.isArray(data3)){
if(Object.keys(data3).length < 1){
const err12 = {instancePath:instancePath+"/counted",schemaPath:"#/properties/counted/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema284.properties.counted,data:data3};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
for(const key3 in data3){
const _errs14 = errors;
if(typeof key3 === "string"){
if(func2(key3) > 80){
const err13 = {instancePath:instancePath+"/counted",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key3,propertyName:key3};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
if(!pattern4.test(key3)){
const err14 = {instancePath:instancePath+"/counted",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key3,propertyName:key3};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
else {
const err15 = {instancePath:instancePath+"/counted",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key3,propertyName:key3};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
var valid5 = _errs14 === errors;
if(!valid5){
const err16 = {instancePath:instancePath+"/counted",schemaPath:"#/properties/counted/propertyNames",keyword:"propertyNames",params:{propertyName: key3},message:"property name must be valid",schema:schema284.properties.counted.propertyNames,parentSchema:schema284.properties.counted,data:data3};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
for(const key4 in data3){
let data4 = data3[key4];
if(data4 && typeof data4 == "object" && !Array.isArray(data4)){
if(data4.one === undefined){
const err17 = {instancePath:instancePath+"/counted/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/counted/additionalProperties/required",keyword:"required",params:{missingProperty: "one"},message:"must have required property '"+"one"+"'",schema:schema284.properties.counted.additionalProperties.required,parentSchema:schema284.properties.counted.additionalProperties,data:data4};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
if(data4.other === undefined){
const err18 = {instancePath:instancePath+"/counted/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/counted/additionalProperties/required",keyword:"required",params:{missingProperty: "other"},message:"must have required property '"+"other"+"'",schema:schema284.properties.counted.additionalProperties.required,parentSchema:schema284.properties.counted.additionalProperties,data:data4};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
for(const key5 in data4){
if(!((key5 === "one") || (key5 === "other"))){
const err19 = {instancePath:instancePath+"/counted/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/counted/additionalProperties/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key5},message:"must NOT have additional properties",schema:false,parentSchema:schema284.properties.counted.additionalProperties,data:data4};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
if(data4.one !== undefined){
let data5 = data4.one;
if(typeof data5 === "string"){
if(func2(data5) > 2000){
const err20 = {instancePath:instancePath+"/counted/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/one",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
if(func2(data5) < 1){
const err21 = {instancePath:instancePath+"/counted/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/one",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
else {
const err22 = {instancePath:instancePath+"/counted/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/one",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
if(data4.other !== undefined){
let data6 = data4.other;
if(typeof data6 === "string"){
if(func2(data6) > 2000){
const err23 = {instancePath:instancePath+"/counted/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/other",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
if(func2(data6) < 1){
const err24 = {instancePath:instancePath+"/counted/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/other",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
else {
const err25 = {instancePath:instancePath+"/counted/" + key4.replace(/~/g, "~0").replace(/\//g, "~1")+"/other",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
}
}
else {
const err26 = {instancePath:instancePath+"/counted/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/counted/additionalProperties/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema284.properties.counted.additionalProperties.type,parentSchema:schema284.properties.counted.additionalProperties,data:data4};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
}
else {
const err27 = {instancePath:instancePath+"/counted",schemaPath:"#/properties/counted/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema284.properties.counted.type,parentSchema:schema284.properties.counted,data:data3};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
}
}
else {
const err28 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema284.type,parentSchema:schema284,data};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
validate137.errors = vErrors;
return errors === 0;
}
validate137.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_policy = validate138;
const schema290 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"policy.json","title":"Policy","description":"Rules of the clinic that hold at all times, beside the path of an instrument.","type":"object","additionalProperties":false,"required":["kind","id","title","stage","purpose","who","points","source"],"properties":{"kind":{"const":"policy","description":"The kind of document; it picks this schema."},"id":{"$ref":"defs.json#/$defs/id"},"title":{"$ref":"defs.json#/$defs/label"},"stage":{"$ref":"defs.json#/$defs/id","description":"Term of the domain stage: the chapter it is printed in."},"order":{"type":"integer","minimum":1,"maximum":99,"description":"Place within its chapter: lower comes first (default 50)."},"purpose":{"$ref":"defs.json#/$defs/text","description":"What it achieves, in a sentence."},"who":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Whom it binds: terms of the domain role."},"only-when":{"$ref":"defs.json#/$defs/condition","description":"Printed only for clinics where this holds."},"points":{"type":"array","items":{"$ref":"defs.json#/$defs/point"},"minItems":2},"procedures":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Procedures that belong to it."},"tasks":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Tasks that belong to it; printed with how often and who."},"decisions":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Decisions that belong to it."},"forms":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Forms on which it is written down."},"source":{"$ref":"defs.json#/$defs/source","description":"Where this is from."}}};

function validate139(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate139.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(Object.keys(data).length < 1){
const err0 = {instancePath,schemaPath:"#/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
for(const key0 in data){
if(!(((key0 === "all") || (key0 === "any")) || (key0 === "not"))){
if(!(validate23(data[key0], {instancePath:instancePath+"/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"),parentData:data,parentDataProperty:key0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate23.errors : vErrors.concat(validate23.errors);
errors = vErrors.length;
}
}
}
if(data.all !== undefined){
let data1 = data.all;
if(Array.isArray(data1)){
if(data1.length < 1){
const err1 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
const len0 = data1.length;
for(let i0=0; i0<len0; i0++){
if(!(validate22(data1[i0], {instancePath:instancePath+"/all/" + i0,parentData:data1,parentDataProperty:i0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err2 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.all.type,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.any !== undefined){
let data3 = data.any;
if(Array.isArray(data3)){
if(data3.length < 1){
const err3 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
const len1 = data3.length;
for(let i1=0; i1<len1; i1++){
if(!(validate22(data3[i1], {instancePath:instancePath+"/any/" + i1,parentData:data3,parentDataProperty:i1,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err4 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.any.type,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.not !== undefined){
if(!(validate22(data.not, {instancePath:instancePath+"/not",parentData:data,parentDataProperty:"not",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err5 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema37.type,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
validate139.errors = vErrors;
return errors === 0;
}
validate139.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate145(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate145.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema262.required,parentSchema:schema262,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.say === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "say"},message:"must have required property '"+"say"+"'",schema:schema262.required,parentSchema:schema262,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!(((((((key0 === "id") || (key0 === "say")) || (key0 === "why")) || (key0 === "only-when")) || (key0 === "caution")) || (key0 === "if-not")) || (key0 === "source"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema262,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err3 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(!pattern4.test(data0)){
const err4 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
else {
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
if(data.say !== undefined){
let data1 = data.say;
if(typeof data1 === "string"){
if(func2(data1) > 2000){
const err6 = {instancePath:instancePath+"/say",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
if(func2(data1) < 1){
const err7 = {instancePath:instancePath+"/say",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
else {
const err8 = {instancePath:instancePath+"/say",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.why !== undefined){
let data2 = data.why;
if(typeof data2 === "string"){
if(func2(data2) > 2000){
const err9 = {instancePath:instancePath+"/why",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(func2(data2) < 1){
const err10 = {instancePath:instancePath+"/why",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
else {
const err11 = {instancePath:instancePath+"/why",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data["only-when"] !== undefined){
if(!(validate22(data["only-when"], {instancePath:instancePath+"/only-when",parentData:data,parentDataProperty:"only-when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
if(data.caution !== undefined){
let data4 = data.caution;
if(typeof data4 === "string"){
if(func2(data4) > 2000){
const err12 = {instancePath:instancePath+"/caution",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data4) < 1){
const err13 = {instancePath:instancePath+"/caution",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/caution",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
if(data["if-not"] !== undefined){
let data5 = data["if-not"];
if(typeof data5 === "string"){
if(func2(data5) > 2000){
const err15 = {instancePath:instancePath+"/if-not",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(func2(data5) < 1){
const err16 = {instancePath:instancePath+"/if-not",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
else {
const err17 = {instancePath:instancePath+"/if-not",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
if(data.source !== undefined){
if(!(validate48(data.source, {instancePath:instancePath+"/source",parentData:data,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate48.errors : vErrors.concat(validate48.errors);
errors = vErrors.length;
}
}
}
else {
const err18 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema262.type,parentSchema:schema262,data};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
validate145.errors = vErrors;
return errors === 0;
}
validate145.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate149(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate149.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if((typeof data !== "string") && (!(data && typeof data == "object" && !Array.isArray(data)))){
const err0 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: schema96.type},message:"must be string,object",schema:schema96.type,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(typeof data === "string"){
if(!pattern40.test(data)){
const err1 = {instancePath,schemaPath:"#/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*$",parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema96.required,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
for(const key0 in data){
if(!(((((key0 === "id") || (key0 === "at")) || (key0 === "evidence")) || (key0 === "checked")) || (key0 === "note"))){
const err3 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err4 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(!pattern4.test(data0)){
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
else {
const err6 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
if(data.at !== undefined){
let data1 = data.at;
if(typeof data1 === "string"){
if(func2(data1) < 1){
const err7 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
else {
const err8 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema96.properties.at.type,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.evidence !== undefined){
let data2 = data.evidence;
if(!((((data2 === "read") || (data2 === "recalled")) || (data2 === "computed")) || (data2 === "decided"))){
const err9 = {instancePath:instancePath+"/evidence",schemaPath:"defs.json#/$defs/evidence/enum",keyword:"enum",params:{allowedValues: schema98.enum},message:"must be equal to one of the allowed values",schema:schema98.enum,parentSchema:schema98,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
if(data.checked !== undefined){
let data3 = data.checked;
if(typeof data3 === "string"){
if(!pattern18.test(data3)){
const err10 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
else {
const err11 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.note !== undefined){
let data4 = data.note;
if(typeof data4 === "string"){
if(func2(data4) > 2000){
const err12 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data4) < 1){
const err13 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
}
validate149.errors = vErrors;
return errors === 0;
}
validate149.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate138(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="policy.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate138.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema290.required,parentSchema:schema290,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.id === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema290.required,parentSchema:schema290,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data.title === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema290.required,parentSchema:schema290,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
if(data.stage === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "stage"},message:"must have required property '"+"stage"+"'",schema:schema290.required,parentSchema:schema290,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(data.purpose === undefined){
const err4 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "purpose"},message:"must have required property '"+"purpose"+"'",schema:schema290.required,parentSchema:schema290,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(data.who === undefined){
const err5 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "who"},message:"must have required property '"+"who"+"'",schema:schema290.required,parentSchema:schema290,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(data.points === undefined){
const err6 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "points"},message:"must have required property '"+"points"+"'",schema:schema290.required,parentSchema:schema290,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
if(data.source === undefined){
const err7 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema290.required,parentSchema:schema290,data};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
for(const key0 in data){
if(!(func1.call(schema290.properties, key0))){
const err8 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema290,data};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("policy" !== data0){
const err9 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "policy"},message:"must be equal to constant",schema:"policy",parentSchema:schema290.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
if(data.id !== undefined){
let data1 = data.id;
if(typeof data1 === "string"){
if(func2(data1) > 80){
const err10 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
if(!pattern4.test(data1)){
const err11 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
else {
const err12 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
if(data.title !== undefined){
let data2 = data.title;
if(typeof data2 === "string"){
if(func2(data2) > 120){
const err13 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
if(func2(data2) < 1){
const err14 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
else {
const err15 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
}
if(data.stage !== undefined){
let data3 = data.stage;
if(typeof data3 === "string"){
if(func2(data3) > 80){
const err16 = {instancePath:instancePath+"/stage",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data3};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
if(!pattern4.test(data3)){
const err17 = {instancePath:instancePath+"/stage",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data3};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
else {
const err18 = {instancePath:instancePath+"/stage",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data3};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
if(data.order !== undefined){
let data4 = data.order;
if(!(((typeof data4 == "number") && (!(data4 % 1) && !isNaN(data4))) && (isFinite(data4)))){
const err19 = {instancePath:instancePath+"/order",schemaPath:"#/properties/order/type",keyword:"type",params:{type: "integer"},message:"must be integer",schema:schema290.properties.order.type,parentSchema:schema290.properties.order,data:data4};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
if((typeof data4 == "number") && (isFinite(data4))){
if(data4 > 99 || isNaN(data4)){
const err20 = {instancePath:instancePath+"/order",schemaPath:"#/properties/order/maximum",keyword:"maximum",params:{comparison: "<=", limit: 99},message:"must be <= 99",schema:99,parentSchema:schema290.properties.order,data:data4};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
if(data4 < 1 || isNaN(data4)){
const err21 = {instancePath:instancePath+"/order",schemaPath:"#/properties/order/minimum",keyword:"minimum",params:{comparison: ">=", limit: 1},message:"must be >= 1",schema:1,parentSchema:schema290.properties.order,data:data4};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
}
if(data.purpose !== undefined){
let data5 = data.purpose;
if(typeof data5 === "string"){
if(func2(data5) > 2000){
const err22 = {instancePath:instancePath+"/purpose",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
if(func2(data5) < 1){
const err23 = {instancePath:instancePath+"/purpose",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
else {
const err24 = {instancePath:instancePath+"/purpose",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
if(data.who !== undefined){
let data6 = data.who;
if(Array.isArray(data6)){
if(data6.length < 1){
const err25 = {instancePath:instancePath+"/who",schemaPath:"#/properties/who/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema290.properties.who,data:data6};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
const len0 = data6.length;
for(let i0=0; i0<len0; i0++){
let data7 = data6[i0];
if(typeof data7 === "string"){
if(func2(data7) > 80){
const err26 = {instancePath:instancePath+"/who/" + i0,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data7};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
if(!pattern4.test(data7)){
const err27 = {instancePath:instancePath+"/who/" + i0,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data7};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
}
else {
const err28 = {instancePath:instancePath+"/who/" + i0,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data7};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
}
let i1 = data6.length;
let j0;
if(i1 > 1){
outer0:
for(;i1--;){
for(j0 = i1; j0--;){
if(func0(data6[i1], data6[j0])){
const err29 = {instancePath:instancePath+"/who",schemaPath:"#/properties/who/uniqueItems",keyword:"uniqueItems",params:{i: i1, j: j0},message:"must NOT have duplicate items (items ## "+j0+" and "+i1+" are identical)",schema:true,parentSchema:schema290.properties.who,data:data6};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
break outer0;
}
}
}
}
}
else {
const err30 = {instancePath:instancePath+"/who",schemaPath:"#/properties/who/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema290.properties.who.type,parentSchema:schema290.properties.who,data:data6};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
}
if(data["only-when"] !== undefined){
if(!(validate139(data["only-when"], {instancePath:instancePath+"/only-when",parentData:data,parentDataProperty:"only-when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate139.errors : vErrors.concat(validate139.errors);
errors = vErrors.length;
}
}
if(data.points !== undefined){
let data9 = data.points;
if(Array.isArray(data9)){
if(data9.length < 2){
const err31 = {instancePath:instancePath+"/points",schemaPath:"#/properties/points/minItems",keyword:"minItems",params:{limit: 2},message:"must NOT have fewer than 2 items",schema:2,parentSchema:schema290.properties.points,data:data9};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
const len1 = data9.length;
for(let i2=0; i2<len1; i2++){
if(!(validate145(data9[i2], {instancePath:instancePath+"/points/" + i2,parentData:data9,parentDataProperty:i2,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate145.errors : vErrors.concat(validate145.errors);
errors = vErrors.length;
}
}
}
else {
const err32 = {instancePath:instancePath+"/points",schemaPath:"#/properties/points/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema290.properties.points.type,parentSchema:schema290.properties.points,data:data9};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
}
if(data.procedures !== undefined){
let data11 = data.procedures;
if(Array.isArray(data11)){
if(data11.length < 1){
const err33 = {instancePath:instancePath+"/procedures",schemaPath:"#/properties/procedures/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema290.properties.procedures,data:data11};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
const len2 = data11.length;
for(let i3=0; i3<len2; i3++){
let data12 = data11[i3];
if(typeof data12 === "string"){
if(func2(data12) > 80){
const err34 = {instancePath:instancePath+"/procedures/" + i3,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data12};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
if(!pattern4.test(data12)){
const err35 = {instancePath:instancePath+"/procedures/" + i3,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data12};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
}
else {
const err36 = {instancePath:instancePath+"/procedures/" + i3,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data12};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
}
}
let i4 = data11.length;
let j1;
if(i4 > 1){
outer1:
for(;i4--;){
for(j1 = i4; j1--;){
if(func0(data11[i4], data11[j1])){
const err37 = {instancePath:instancePath+"/procedures",schemaPath:"#/properties/procedures/uniqueItems",keyword:"uniqueItems",params:{i: i4, j: j1},message:"must NOT have duplicate items (items ## "+j1+" and "+i4+" are identical)",schema:true,parentSchema:schema290.properties.procedures,data:data11};
if(vErrors === null){
vErrors = [err37];
}
else {
vErrors.push(err37);
}
errors++;
break outer1;
}
}
}
}
}
else {
const err38 = {instancePath:instancePath+"/procedures",schemaPath:"#/properties/procedures/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema290.properties.procedures.type,parentSchema:schema290.properties.procedures,data:data11};
if(vErrors === null){
vErrors = [err38];
}
else {
vErrors.push(err38);
}
errors++;
}
}
if(data.tasks !== undefined){
let data13 = data.tasks;
if(Array.isArray(data13)){
if(data13.length < 1){
const err39 = {instancePath:instancePath+"/tasks",schemaPath:"#/properties/tasks/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema290.properties.tasks,data:data13};
if(vErrors === null){
vErrors = [err39];
}
else {
vErrors.push(err39);
}
errors++;
}
const len3 = data13.length;
for(let i5=0; i5<len3; i5++){
let data14 = data13[i5];
if(typeof data14 === "string"){
if(func2(data14) > 80){
const err40 = {instancePath:instancePath+"/tasks/" + i5,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data14};
if(vErrors === null){
vErrors = [err40];
}
else {
vErrors.push(err40);
}
errors++;
}
if(!pattern4.test(data14)){
const err41 = {instancePath:instancePath+"/tasks/" + i5,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data14};
if(vErrors === null){
vErrors = [err41];
}
else {
vErrors.push(err41);
}
errors++;
}
}
else {
const err42 = {instancePath:instancePath+"/tasks/" + i5,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data14};
if(vErrors === null){
vErrors = [err42];
}
else {
vErrors.push(err42);
}
errors++;
}
}
let i6 = data13.length;
let j2;
if(i6 > 1){
outer2:
for(;i6--;){
for(j2 = i6; j2--;){
if(func0(data13[i6], data13[j2])){
const err43 = {instancePath:instancePath+"/tasks",schemaPath:"#/properties/tasks/uniqueItems",keyword:"uniqueItems",params:{i: i6, j: j2},message:"must NOT have duplicate items (items ## "+j2+" and "+i6+" are identical)",schema:true,parentSchema:schema290.properties.tasks,data:data13};
if(vErrors === null){
vErrors = [err43];
}
else {
vErrors.push(err43);
}
errors++;
break outer2;
}
}
}
}
}
else {
const err44 = {instancePath:instancePath+"/tasks",schemaPath:"#/properties/tasks/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema290.properties.tasks.type,parentSchema:schema290.properties.tasks,data:data13};
if(vErrors === null){
vErrors = [err44];
}
else {
vErrors.push(err44);
}
errors++;
}
}
if(data.decisions !== undefined){
let data15 = data.decisions;
if(Array.isArray(data15)){
if(data15.length < 1){
const err45 = {instancePath:instancePath+"/decisions",schemaPath:"#/properties/decisions/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema290.properties.decisions,data:data15};
if(vErrors === null){
vErrors = [err45];
}
else {
vErrors.push(err45);
}
errors++;
}
const len4 = data15.length;
for(let i7=0; i7<len4; i7++){
let data16 = data15[i7];
if(typeof data16 === "string"){
if(func2(data16) > 80){
const err46 = {instancePath:instancePath+"/decisions/" + i7,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data16};
if(vErrors === null){
vErrors = [err46];
}
else {
vErrors.push(err46);
}
errors++;
}
if(!pattern4.test(data16)){
const err47 = {instancePath:instancePath+"/decisions/" + i7,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data16};
if(vErrors === null){
vErrors = [err47];
}
else {
vErrors.push(err47);
}
errors++;
}
}
else {
const err48 = {instancePath:instancePath+"/decisions/" + i7,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data16};
if(vErrors === null){
vErrors = [err48];
}
else {
vErrors.push(err48);
}
errors++;
}
}
let i8 = data15.length;
let j3;
if(i8 > 1){
outer3:
for(;i8--;){
for(j3 = i8; j3--;){
if(func0(data15[i8], data15[j3])){
const err49 = {instancePath:instancePath+"/decisions",schemaPath:"#/properties/decisions/uniqueItems",keyword:"uniqueItems",params:{i: i8, j: j3},message:"must NOT have duplicate items (items ## "+j3+" and "+i8+" are identical)",schema:true,parentSchema:schema290.properties.decisions,data:data15};
if(vErrors === null){
vErrors = [err49];
}
else {
vErrors.push(err49);
}
errors++;
break outer3;
}
}
}
}
}
else {
const err50 = {instancePath:instancePath+"/decisions",schemaPath:"#/properties/decisions/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema290.properties.decisions.type,parentSchema:schema290.properties.decisions,data:data15};
if(vErrors === null){
vErrors = [err50];
}
else {
vErrors.push(err50);
}
errors++;
}
}
if(data.forms !== undefined){
let data17 = data.forms;
if(Array.isArray(data17)){
if(data17.length < 1){
const err51 = {instancePath:instancePath+"/forms",schemaPath:"#/properties/forms/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema290.properties.forms,data:data17};
if(vErrors === null){
vErrors = [err51];
}
else {
vErrors.push(err51);
}
errors++;
}
const len5 = data17.length;
for(let i9=0; i9<len5; i9++){
let data18 = data17[i9];
if(typeof data18 === "string"){
if(func2(data18) > 80){
const err52 = {instancePath:instancePath+"/forms/" + i9,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data18};
if(vErrors === null){
vErrors = [err52];
}
else {
vErrors.push(err52);
}
errors++;
}
if(!pattern4.test(data18)){
const err53 = {instancePath:instancePath+"/forms/" + i9,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data18};
if(vErrors === null){
vErrors = [err53];
}
else {
vErrors.push(err53);
}
errors++;
}
}
else {
const err54 = {instancePath:instancePath+"/forms/" + i9,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data18};
if(vErrors === null){
vErrors = [err54];
}
else {
vErrors.push(err54);
}
errors++;
}
}
let i10 = data17.length;
let j4;
if(i10 > 1){
outer4:
for(;i10--;){
for(j4 = i10; j4--;){
if(func0(data17[i10], data17[j4])){
const err55 = {instancePath:instancePath+"/forms",schemaPath:"#/properties/forms/uniqueItems",keyword:"uniqueItems",params:{i: i10, j: j4},message:"must NOT have duplicate items (items ## "+j4+" and "+i10+" are identical)",schema:true,parentSchema:schema290.properties.forms,data:data17};
if(vErrors === null){
vErrors = [err55];
}
else {
vErrors.push(err55);
}
errors++;
break outer4;
}
}
}
}
}
else {
const err56 = {instancePath:instancePath+"/forms",schemaPath:"#/properties/forms/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema290.properties.forms.type,parentSchema:schema290.properties.forms,data:data17};
if(vErrors === null){
vErrors = [err56];
}
else {
vErrors.push(err56);
}
errors++;
}
}
if(data.source !== undefined){
if(!(validate149(data.source, {instancePath:instancePath+"/source",parentData:data,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate149.errors : vErrors.concat(validate149.errors);
errors = vErrors.length;
}
}
}
else {
const err57 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema290.type,parentSchema:schema290,data};
if(vErrors === null){
vErrors = [err57];
}
else {
vErrors.push(err57);
}
errors++;
}
validate138.errors = vErrors;
return errors === 0;
}
validate138.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_procedure = validate151;
const schema312 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"procedure.json","title":"Procedure","description":"The ordered steps of one stage.","type":"object","additionalProperties":false,"required":["kind","id","title","stage","purpose","who","where","wear","ready","steps","done","source"],"properties":{"kind":{"const":"procedure","description":"The kind of document; it picks this schema."},"id":{"$ref":"defs.json#/$defs/id"},"title":{"$ref":"defs.json#/$defs/label"},"stage":{"$ref":"defs.json#/$defs/id","description":"Term of the domain stage: the chapter it is printed in."},"order":{"type":"integer","minimum":1,"maximum":99,"description":"Place within its chapter: lower comes first (default 50)."},"purpose":{"$ref":"defs.json#/$defs/text","description":"What it achieves, in a sentence."},"only-when":{"$ref":"defs.json#/$defs/condition","description":"Printed only for clinics where this holds."},"who":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Roles: terms of the domain role."},"where":{"$ref":"defs.json#/$defs/id","description":"Zone: a term of the domain zone."},"wear":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Protective equipment: terms of the domain ppe."},"ready":{"type":"array","items":{"$ref":"defs.json#/$defs/text"},"minItems":1,"description":"What to have ready."},"cautions":{"type":"array","items":{"$ref":"defs.json#/$defs/text"},"minItems":1,"description":"What can hurt someone, printed before the steps."},"steps":{"type":"array","items":{"$ref":"defs.json#/$defs/step"},"minItems":2},"done":{"$ref":"defs.json#/$defs/text","description":"How one knows it is done."},"records":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Forms on which it is written down."},"decisions":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Decisions that belong to it."},"source":{"$ref":"defs.json#/$defs/source","description":"Where this is from."}}};

function validate152(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate152.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(Object.keys(data).length < 1){
const err0 = {instancePath,schemaPath:"#/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
for(const key0 in data){
if(!(((key0 === "all") || (key0 === "any")) || (key0 === "not"))){
if(!(validate23(data[key0], {instancePath:instancePath+"/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"),parentData:data,parentDataProperty:key0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate23.errors : vErrors.concat(validate23.errors);
errors = vErrors.length;
}
}
}
if(data.all !== undefined){
let data1 = data.all;
if(Array.isArray(data1)){
if(data1.length < 1){
const err1 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
const len0 = data1.length;
for(let i0=0; i0<len0; i0++){
if(!(validate22(data1[i0], {instancePath:instancePath+"/all/" + i0,parentData:data1,parentDataProperty:i0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err2 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.all.type,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.any !== undefined){
let data3 = data.any;
if(Array.isArray(data3)){
if(data3.length < 1){
const err3 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
const len1 = data3.length;
for(let i1=0; i1<len1; i1++){
if(!(validate22(data3[i1], {instancePath:instancePath+"/any/" + i1,parentData:data3,parentDataProperty:i1,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err4 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.any.type,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.not !== undefined){
if(!(validate22(data.not, {instancePath:instancePath+"/not",parentData:data,parentDataProperty:"not",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err5 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema37.type,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
validate152.errors = vErrors;
return errors === 0;
}
validate152.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate158(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate158.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema250.required,parentSchema:schema250,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.do === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "do"},message:"must have required property '"+"do"+"'",schema:schema250.required,parentSchema:schema250,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!((((((((key0 === "id") || (key0 === "do")) || (key0 === "why")) || (key0 === "only-when")) || (key0 === "caution")) || (key0 === "if-not")) || (key0 === "on-card")) || (key0 === "source"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema250,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err3 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(!pattern4.test(data0)){
const err4 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
else {
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
if(data.do !== undefined){
let data1 = data.do;
if(typeof data1 === "string"){
if(func2(data1) > 2000){
const err6 = {instancePath:instancePath+"/do",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
if(func2(data1) < 1){
const err7 = {instancePath:instancePath+"/do",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
else {
const err8 = {instancePath:instancePath+"/do",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.why !== undefined){
let data2 = data.why;
if(typeof data2 === "string"){
if(func2(data2) > 2000){
const err9 = {instancePath:instancePath+"/why",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(func2(data2) < 1){
const err10 = {instancePath:instancePath+"/why",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
else {
const err11 = {instancePath:instancePath+"/why",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data["only-when"] !== undefined){
if(!(validate22(data["only-when"], {instancePath:instancePath+"/only-when",parentData:data,parentDataProperty:"only-when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
if(data.caution !== undefined){
let data4 = data.caution;
if(typeof data4 === "string"){
if(func2(data4) > 2000){
const err12 = {instancePath:instancePath+"/caution",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data4) < 1){
const err13 = {instancePath:instancePath+"/caution",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/caution",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
if(data["if-not"] !== undefined){
let data5 = data["if-not"];
if(typeof data5 === "string"){
if(func2(data5) > 2000){
const err15 = {instancePath:instancePath+"/if-not",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(func2(data5) < 1){
const err16 = {instancePath:instancePath+"/if-not",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
else {
const err17 = {instancePath:instancePath+"/if-not",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
if(data["on-card"] !== undefined){
let data6 = data["on-card"];
if(typeof data6 === "string"){
if(func2(data6) > 2000){
const err18 = {instancePath:instancePath+"/on-card",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
if(func2(data6) < 1){
const err19 = {instancePath:instancePath+"/on-card",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
else {
const err20 = {instancePath:instancePath+"/on-card",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
if(data.source !== undefined){
if(!(validate48(data.source, {instancePath:instancePath+"/source",parentData:data,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate48.errors : vErrors.concat(validate48.errors);
errors = vErrors.length;
}
}
}
else {
const err21 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema250.type,parentSchema:schema250,data};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
validate158.errors = vErrors;
return errors === 0;
}
validate158.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate162(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate162.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if((typeof data !== "string") && (!(data && typeof data == "object" && !Array.isArray(data)))){
const err0 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: schema96.type},message:"must be string,object",schema:schema96.type,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(typeof data === "string"){
if(!pattern40.test(data)){
const err1 = {instancePath,schemaPath:"#/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*$",parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema96.required,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
for(const key0 in data){
if(!(((((key0 === "id") || (key0 === "at")) || (key0 === "evidence")) || (key0 === "checked")) || (key0 === "note"))){
const err3 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err4 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(!pattern4.test(data0)){
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
else {
const err6 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
if(data.at !== undefined){
let data1 = data.at;
if(typeof data1 === "string"){
if(func2(data1) < 1){
const err7 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
else {
const err8 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema96.properties.at.type,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.evidence !== undefined){
let data2 = data.evidence;
if(!((((data2 === "read") || (data2 === "recalled")) || (data2 === "computed")) || (data2 === "decided"))){
const err9 = {instancePath:instancePath+"/evidence",schemaPath:"defs.json#/$defs/evidence/enum",keyword:"enum",params:{allowedValues: schema98.enum},message:"must be equal to one of the allowed values",schema:schema98.enum,parentSchema:schema98,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
if(data.checked !== undefined){
let data3 = data.checked;
if(typeof data3 === "string"){
if(!pattern18.test(data3)){
const err10 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
else {
const err11 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.note !== undefined){
let data4 = data.note;
if(typeof data4 === "string"){
if(func2(data4) > 2000){
const err12 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data4) < 1){
const err13 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
}
validate162.errors = vErrors;
return errors === 0;
}
validate162.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate151(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="procedure.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate151.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema312.required,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.id === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema312.required,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data.title === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema312.required,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
if(data.stage === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "stage"},message:"must have required property '"+"stage"+"'",schema:schema312.required,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
if(data.purpose === undefined){
const err4 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "purpose"},message:"must have required property '"+"purpose"+"'",schema:schema312.required,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(data.who === undefined){
const err5 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "who"},message:"must have required property '"+"who"+"'",schema:schema312.required,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(data.where === undefined){
const err6 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "where"},message:"must have required property '"+"where"+"'",schema:schema312.required,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
if(data.wear === undefined){
const err7 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "wear"},message:"must have required property '"+"wear"+"'",schema:schema312.required,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
if(data.ready === undefined){
const err8 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "ready"},message:"must have required property '"+"ready"+"'",schema:schema312.required,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(data.steps === undefined){
const err9 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "steps"},message:"must have required property '"+"steps"+"'",schema:schema312.required,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(data.done === undefined){
const err10 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "done"},message:"must have required property '"+"done"+"'",schema:schema312.required,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
if(data.source === undefined){
const err11 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema312.required,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
for(const key0 in data){
if(!(func1.call(schema312.properties, key0))){
const err12 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("procedure" !== data0){
const err13 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "procedure"},message:"must be equal to constant",schema:"procedure",parentSchema:schema312.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
if(data.id !== undefined){
let data1 = data.id;
if(typeof data1 === "string"){
if(func2(data1) > 80){
const err14 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
if(!pattern4.test(data1)){
const err15 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
}
else {
const err16 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
if(data.title !== undefined){
let data2 = data.title;
if(typeof data2 === "string"){
if(func2(data2) > 120){
const err17 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
if(func2(data2) < 1){
const err18 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
else {
const err19 = {instancePath:instancePath+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data2};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
if(data.stage !== undefined){
let data3 = data.stage;
if(typeof data3 === "string"){
if(func2(data3) > 80){
const err20 = {instancePath:instancePath+"/stage",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data3};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
if(!pattern4.test(data3)){
const err21 = {instancePath:instancePath+"/stage",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data3};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
else {
const err22 = {instancePath:instancePath+"/stage",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data3};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
if(data.order !== undefined){
let data4 = data.order;
if(!(((typeof data4 == "number") && (!(data4 % 1) && !isNaN(data4))) && (isFinite(data4)))){
const err23 = {instancePath:instancePath+"/order",schemaPath:"#/properties/order/type",keyword:"type",params:{type: "integer"},message:"must be integer",schema:schema312.properties.order.type,parentSchema:schema312.properties.order,data:data4};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
if((typeof data4 == "number") && (isFinite(data4))){
if(data4 > 99 || isNaN(data4)){
const err24 = {instancePath:instancePath+"/order",schemaPath:"#/properties/order/maximum",keyword:"maximum",params:{comparison: "<=", limit: 99},message:"must be <= 99",schema:99,parentSchema:schema312.properties.order,data:data4};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
if(data4 < 1 || isNaN(data4)){
const err25 = {instancePath:instancePath+"/order",schemaPath:"#/properties/order/minimum",keyword:"minimum",params:{comparison: ">=", limit: 1},message:"must be >= 1",schema:1,parentSchema:schema312.properties.order,data:data4};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
}
}
if(data.purpose !== undefined){
let data5 = data.purpose;
if(typeof data5 === "string"){
if(func2(data5) > 2000){
const err26 = {instancePath:instancePath+"/purpose",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
if(func2(data5) < 1){
const err27 = {instancePath:instancePath+"/purpose",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
}
else {
const err28 = {instancePath:instancePath+"/purpose",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
}
if(data["only-when"] !== undefined){
if(!(validate152(data["only-when"], {instancePath:instancePath+"/only-when",parentData:data,parentDataProperty:"only-when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate152.errors : vErrors.concat(validate152.errors);
errors = vErrors.length;
}
}
if(data.who !== undefined){
let data7 = data.who;
if(Array.isArray(data7)){
if(data7.length < 1){
const err29 = {instancePath:instancePath+"/who",schemaPath:"#/properties/who/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema312.properties.who,data:data7};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
const len0 = data7.length;
for(let i0=0; i0<len0; i0++){
let data8 = data7[i0];
if(typeof data8 === "string"){
if(func2(data8) > 80){
const err30 = {instancePath:instancePath+"/who/" + i0,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data8};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
if(!pattern4.test(data8)){
const err31 = {instancePath:instancePath+"/who/" + i0,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data8};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
}
else {
const err32 = {instancePath:instancePath+"/who/" + i0,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data8};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
}
let i1 = data7.length;
let j0;
if(i1 > 1){
outer0:
for(;i1--;){
for(j0 = i1; j0--;){
if(func0(data7[i1], data7[j0])){
const err33 = {instancePath:instancePath+"/who",schemaPath:"#/properties/who/uniqueItems",keyword:"uniqueItems",params:{i: i1, j: j0},message:"must NOT have duplicate items (items ## "+j0+" and "+i1+" are identical)",schema:true,parentSchema:schema312.properties.who,data:data7};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
break outer0;
}
}
}
}
}
else {
const err34 = {instancePath:instancePath+"/who",schemaPath:"#/properties/who/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema312.properties.who.type,parentSchema:schema312.properties.who,data:data7};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
}
if(data.where !== undefined){
let data9 = data.where;
if(typeof data9 === "string"){
if(func2(data9) > 80){
const err35 = {instancePath:instancePath+"/where",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data9};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
if(!pattern4.test(data9)){
const err36 = {instancePath:instancePath+"/where",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data9};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
}
}
else {
const err37 = {instancePath:instancePath+"/where",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data9};
if(vErrors === null){
vErrors = [err37];
}
else {
vErrors.push(err37);
}
errors++;
}
}
if(data.wear !== undefined){
let data10 = data.wear;
if(Array.isArray(data10)){
if(data10.length < 1){
const err38 = {instancePath:instancePath+"/wear",schemaPath:"#/properties/wear/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema312.properties.wear,data:data10};
if(vErrors === null){
vErrors = [err38];
}
else {
vErrors.push(err38);
}
errors++;
}
const len1 = data10.length;
for(let i2=0; i2<len1; i2++){
let data11 = data10[i2];
if(typeof data11 === "string"){
if(func2(data11) > 80){
const err39 = {instancePath:instancePath+"/wear/" + i2,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data11};
if(vErrors === null){
vErrors = [err39];
}
else {
vErrors.push(err39);
}
errors++;
}
if(!pattern4.test(data11)){
const err40 = {instancePath:instancePath+"/wear/" + i2,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data11};
if(vErrors === null){
vErrors = [err40];
}
else {
vErrors.push(err40);
}
errors++;
}
}
else {
const err41 = {instancePath:instancePath+"/wear/" + i2,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data11};
if(vErrors === null){
vErrors = [err41];
}
else {
vErrors.push(err41);
}
errors++;
}
}
let i3 = data10.length;
let j1;
if(i3 > 1){
outer1:
for(;i3--;){
for(j1 = i3; j1--;){
if(func0(data10[i3], data10[j1])){
const err42 = {instancePath:instancePath+"/wear",schemaPath:"#/properties/wear/uniqueItems",keyword:"uniqueItems",params:{i: i3, j: j1},message:"must NOT have duplicate items (items ## "+j1+" and "+i3+" are identical)",schema:true,parentSchema:schema312.properties.wear,data:data10};
if(vErrors === null){
vErrors = [err42];
}
else {
vErrors.push(err42);
}
errors++;
break outer1;
}
}
}
}
}
else {
const err43 = {instancePath:instancePath+"/wear",schemaPath:"#/properties/wear/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema312.properties.wear.type,parentSchema:schema312.properties.wear,data:data10};
if(vErrors === null){
vErrors = [err43];
}
else {
vErrors.push(err43);
}
errors++;
}
}
if(data.ready !== undefined){
let data12 = data.ready;
if(Array.isArray(data12)){
if(data12.length < 1){
const err44 = {instancePath:instancePath+"/ready",schemaPath:"#/properties/ready/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema312.properties.ready,data:data12};
if(vErrors === null){
vErrors = [err44];
}
else {
vErrors.push(err44);
}
errors++;
}
const len2 = data12.length;
for(let i4=0; i4<len2; i4++){
let data13 = data12[i4];
if(typeof data13 === "string"){
if(func2(data13) > 2000){
const err45 = {instancePath:instancePath+"/ready/" + i4,schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data13};
if(vErrors === null){
vErrors = [err45];
}
else {
vErrors.push(err45);
}
errors++;
}
if(func2(data13) < 1){
const err46 = {instancePath:instancePath+"/ready/" + i4,schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data13};
if(vErrors === null){
vErrors = [err46];
}
else {
vErrors.push(err46);
}
errors++;
}
}
else {
const err47 = {instancePath:instancePath+"/ready/" + i4,schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data13};
if(vErrors === null){
vErrors = [err47];
}
else {
vErrors.push(err47);
}
errors++;
}
}
}
else {
const err48 = {instancePath:instancePath+"/ready",schemaPath:"#/properties/ready/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema312.properties.ready.type,parentSchema:schema312.properties.ready,data:data12};
if(vErrors === null){
vErrors = [err48];
}
else {
vErrors.push(err48);
}
errors++;
}
}
if(data.cautions !== undefined){
let data14 = data.cautions;
if(Array.isArray(data14)){
if(data14.length < 1){
const err49 = {instancePath:instancePath+"/cautions",schemaPath:"#/properties/cautions/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema312.properties.cautions,data:data14};
if(vErrors === null){
vErrors = [err49];
}
else {
vErrors.push(err49);
}
errors++;
}
const len3 = data14.length;
for(let i5=0; i5<len3; i5++){
let data15 = data14[i5];
if(typeof data15 === "string"){
if(func2(data15) > 2000){
const err50 = {instancePath:instancePath+"/cautions/" + i5,schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data15};
if(vErrors === null){
vErrors = [err50];
}
else {
vErrors.push(err50);
}
errors++;
}
if(func2(data15) < 1){
const err51 = {instancePath:instancePath+"/cautions/" + i5,schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data15};
if(vErrors === null){
vErrors = [err51];
}
else {
vErrors.push(err51);
}
errors++;
}
}
else {
const err52 = {instancePath:instancePath+"/cautions/" + i5,schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data15};
if(vErrors === null){
vErrors = [err52];
}
else {
vErrors.push(err52);
}
errors++;
}
}
}
else {
const err53 = {instancePath:instancePath+"/cautions",schemaPath:"#/properties/cautions/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema312.properties.cautions.type,parentSchema:schema312.properties.cautions,data:data14};
if(vErrors === null){
vErrors = [err53];
}
else {
vErrors.push(err53);
}
errors++;
}
}
if(data.steps !== undefined){
let data16 = data.steps;
if(Array.isArray(data16)){
if(data16.length < 2){
const err54 = {instancePath:instancePath+"/steps",schemaPath:"#/properties/steps/minItems",keyword:"minItems",params:{limit: 2},message:"must NOT have fewer than 2 items",schema:2,parentSchema:schema312.properties.steps,data:data16};
if(vErrors === null){
vErrors = [err54];
}
else {
vErrors.push(err54);
}
errors++;
}
const len4 = data16.length;
for(let i6=0; i6<len4; i6++){
if(!(validate158(data16[i6], {instancePath:instancePath+"/steps/" + i6,parentData:data16,parentDataProperty:i6,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate158.errors : vErrors.concat(validate158.errors);
errors = vErrors.length;
}
}
}
else {
const err55 = {instancePath:instancePath+"/steps",schemaPath:"#/properties/steps/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema312.properties.steps.type,parentSchema:schema312.properties.steps,data:data16};
if(vErrors === null){
vErrors = [err55];
}
else {
vErrors.push(err55);
}
errors++;
}
}
if(data.done !== undefined){
let data18 = data.done;
if(typeof data18 === "string"){
if(func2(data18) > 2000){
const err56 = {instancePath:instancePath+"/done",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data18};
if(vErrors === null){
vErrors = [err56];
}
else {
vErrors.push(err56);
}
errors++;
}
if(func2(data18) < 1){
const err57 = {instancePath:instancePath+"/done",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data18};
if(vErrors === null){
vErrors = [err57];
}
else {
vErrors.push(err57);
}
errors++;
}
}
else {
const err58 = {instancePath:instancePath+"/done",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data18};
if(vErrors === null){
vErrors = [err58];
}
else {
vErrors.push(err58);
}
errors++;
}
}
if(data.records !== undefined){
let data19 = data.records;
if(Array.isArray(data19)){
if(data19.length < 1){
const err59 = {instancePath:instancePath+"/records",schemaPath:"#/properties/records/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema312.properties.records,data:data19};
if(vErrors === null){
vErrors = [err59];
}
else {
vErrors.push(err59);
}
errors++;
}
const len5 = data19.length;
for(let i7=0; i7<len5; i7++){
let data20 = data19[i7];
if(typeof data20 === "string"){
if(func2(data20) > 80){
const err60 = {instancePath:instancePath+"/records/" + i7,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data20};
if(vErrors === null){
vErrors = [err60];
}
else {
vErrors.push(err60);
}
errors++;
}
if(!pattern4.test(data20)){
const err61 = {instancePath:instancePath+"/records/" + i7,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data20};
if(vErrors === null){
vErrors = [err61];
}
else {
vErrors.push(err61);
}
errors++;
}
}
else {
const err62 = {instancePath:instancePath+"/records/" + i7,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data20};
if(vErrors === null){
vErrors = [err62];
}
else {
vErrors.push(err62);
}
errors++;
}
}
let i8 = data19.length;
let j2;
if(i8 > 1){
outer2:
for(;i8--;){
for(j2 = i8; j2--;){
if(func0(data19[i8], data19[j2])){
const err63 = {instancePath:instancePath+"/records",schemaPath:"#/properties/records/uniqueItems",keyword:"uniqueItems",params:{i: i8, j: j2},message:"must NOT have duplicate items (items ## "+j2+" and "+i8+" are identical)",schema:true,parentSchema:schema312.properties.records,data:data19};
if(vErrors === null){
vErrors = [err63];
}
else {
vErrors.push(err63);
}
errors++;
break outer2;
}
}
}
}
}
else {
const err64 = {instancePath:instancePath+"/records",schemaPath:"#/properties/records/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema312.properties.records.type,parentSchema:schema312.properties.records,data:data19};
if(vErrors === null){
vErrors = [err64];
}
else {
vErrors.push(err64);
}
errors++;
}
}
if(data.decisions !== undefined){
let data21 = data.decisions;
if(Array.isArray(data21)){
if(data21.length < 1){
const err65 = {instancePath:instancePath+"/decisions",schemaPath:"#/properties/decisions/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema312.properties.decisions,data:data21};
if(vErrors === null){
vErrors = [err65];
}
else {
vErrors.push(err65);
}
errors++;
}
const len6 = data21.length;
for(let i9=0; i9<len6; i9++){
let data22 = data21[i9];
if(typeof data22 === "string"){
if(func2(data22) > 80){
const err66 = {instancePath:instancePath+"/decisions/" + i9,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data22};
if(vErrors === null){
vErrors = [err66];
}
else {
vErrors.push(err66);
}
errors++;
}
if(!pattern4.test(data22)){
const err67 = {instancePath:instancePath+"/decisions/" + i9,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data22};
if(vErrors === null){
vErrors = [err67];
}
else {
vErrors.push(err67);
}
errors++;
}
}
else {
const err68 = {instancePath:instancePath+"/decisions/" + i9,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data22};
if(vErrors === null){
vErrors = [err68];
}
else {
vErrors.push(err68);
}
errors++;
}
}
let i10 = data21.length;
let j3;
if(i10 > 1){
outer3:
for(;i10--;){
for(j3 = i10; j3--;){
if(func0(data21[i10], data21[j3])){
const err69 = {instancePath:instancePath+"/decisions",schemaPath:"#/properties/decisions/uniqueItems",keyword:"uniqueItems",params:{i: i10, j: j3},message:"must NOT have duplicate items (items ## "+j3+" and "+i10+" are identical)",schema:true,parentSchema:schema312.properties.decisions,data:data21};
if(vErrors === null){
vErrors = [err69];
}
else {
vErrors.push(err69);
}
errors++;
break outer3;
}
}
}
}
}
else {
const err70 = {instancePath:instancePath+"/decisions",schemaPath:"#/properties/decisions/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema312.properties.decisions.type,parentSchema:schema312.properties.decisions,data:data21};
if(vErrors === null){
vErrors = [err70];
}
else {
vErrors.push(err70);
}
errors++;
}
}
if(data.source !== undefined){
if(!(validate162(data.source, {instancePath:instancePath+"/source",parentData:data,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate162.errors : vErrors.concat(validate162.errors);
errors = vErrors.length;
}
}
}
else {
const err71 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema312.type,parentSchema:schema312,data};
if(vErrors === null){
vErrors = [err71];
}
else {
vErrors.push(err71);
}
errors++;
}
validate151.errors = vErrors;
return errors === 0;
}
validate151.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_requirements = validate164;
const schema338 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"requirements.json","title":"Requirements","description":"What a published source asks of a clinic's written program, item by item, and what answers each.","type":"object","additionalProperties":false,"required":["kind","source","items"],"properties":{"kind":{"const":"requirements","description":"The kind of document; it picks this schema."},"source":{"$ref":"defs.json#/$defs/id","description":"Id of an entry of the bibliography: the publication that asks."},"items":{"type":"array","minItems":1,"items":{"type":"object","additionalProperties":false,"required":["id","item","section","text","evidence","reprocessing"],"properties":{"id":{"$ref":"defs.json#/$defs/id","description":"Unique among all requirements."},"item":{"type":"string","minLength":1,"maxLength":40,"description":"Number of the item as the source prints it."},"section":{"$ref":"defs.json#/$defs/label","description":"Heading under which the source prints it."},"text":{"$ref":"defs.json#/$defs/text","description":"What is asked, in our own words."},"clause":{"type":"string","minLength":1,"maxLength":80,"description":"Clause, where it is not the number of the item."},"evidence":{"$ref":"defs.json#/$defs/evidence"},"reprocessing":{"type":"boolean","description":"Whether it is about the path of an instrument."},"answered-by":{"type":"array","minItems":1,"uniqueItems":true,"items":{"type":"string","pattern":"^[a-z]+:[a-z0-9.-]+(?:/[a-z0-9.-]+)?$","maxLength":120,"description":"What answers it, kind and id: `policy:sharps`, `policy:sharps/recap` (a point), `procedure:wash`, `task:wipe`."},"description":"What answers it: policies and their points, procedures, decisions, tasks, forms, limits, sections. Without it the item is open."}}}}}};
const pattern169 = new RegExp("^[a-z]+:[a-z0-9.-]+(?:/[a-z0-9.-]+)?$", "u");

function validate164(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="requirements.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate164.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema338.required,parentSchema:schema338,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.source === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema338.required,parentSchema:schema338,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data.items === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "items"},message:"must have required property '"+"items"+"'",schema:schema338.required,parentSchema:schema338,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
for(const key0 in data){
if(!(((key0 === "kind") || (key0 === "source")) || (key0 === "items"))){
const err3 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema338,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("requirements" !== data0){
const err4 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "requirements"},message:"must be equal to constant",schema:"requirements",parentSchema:schema338.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.source !== undefined){
let data1 = data.source;
if(typeof data1 === "string"){
if(func2(data1) > 80){
const err5 = {instancePath:instancePath+"/source",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(!pattern4.test(data1)){
const err6 = {instancePath:instancePath+"/source",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/source",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
if(data.items !== undefined){
let data2 = data.items;
if(Array.isArray(data2)){
if(data2.length < 1){
const err8 = {instancePath:instancePath+"/items",schemaPath:"#/properties/items/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema338.properties.items,data:data2};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
const len0 = data2.length;
for(let i0=0; i0<len0; i0++){
let data3 = data2[i0];
if(data3 && typeof data3 == "object" && !Array.isArray(data3)){
if(data3.id === undefined){
const err9 = {instancePath:instancePath+"/items/" + i0,schemaPath:"#/properties/items/items/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema338.properties.items.items.required,parentSchema:schema338.properties.items.items,data:data3};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(data3.item === undefined){
const err10 = {instancePath:instancePath+"/items/" + i0,schemaPath:"#/properties/items/items/required",keyword:"required",params:{missingProperty: "item"},message:"must have required property '"+"item"+"'",schema:schema338.properties.items.items.required,parentSchema:schema338.properties.items.items,data:data3};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
if(data3.section === undefined){
const err11 = {instancePath:instancePath+"/items/" + i0,schemaPath:"#/properties/items/items/required",keyword:"required",params:{missingProperty: "section"},message:"must have required property '"+"section"+"'",schema:schema338.properties.items.items.required,parentSchema:schema338.properties.items.items,data:data3};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
if(data3.text === undefined){
const err12 = {instancePath:instancePath+"/items/" + i0,schemaPath:"#/properties/items/items/required",keyword:"required",params:{missingProperty: "text"},message:"must have required property '"+"text"+"'",schema:schema338.properties.items.items.required,parentSchema:schema338.properties.items.items,data:data3};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(data3.evidence === undefined){
const err13 = {instancePath:instancePath+"/items/" + i0,schemaPath:"#/properties/items/items/required",keyword:"required",params:{missingProperty: "evidence"},message:"must have required property '"+"evidence"+"'",schema:schema338.properties.items.items.required,parentSchema:schema338.properties.items.items,data:data3};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
if(data3.reprocessing === undefined){
const err14 = {instancePath:instancePath+"/items/" + i0,schemaPath:"#/properties/items/items/required",keyword:"required",params:{missingProperty: "reprocessing"},message:"must have required property '"+"reprocessing"+"'",schema:schema338.properties.items.items.required,parentSchema:schema338.properties.items.items,data:data3};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
for(const key1 in data3){
if(!((((((((key1 === "id") || (key1 === "item")) || (key1 === "section")) || (key1 === "text")) || (key1 === "clause")) || (key1 === "evidence")) || (key1 === "reprocessing")) || (key1 === "answered-by"))){
const err15 = {instancePath:instancePath+"/items/" + i0,schemaPath:"#/properties/items/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key1},message:"must NOT have additional properties",schema:false,parentSchema:schema338.properties.items.items,data:data3};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
}
if(data3.id !== undefined){
let data4 = data3.id;
if(typeof data4 === "string"){
if(func2(data4) > 80){
const err16 = {instancePath:instancePath+"/items/" + i0+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
if(!pattern4.test(data4)){
const err17 = {instancePath:instancePath+"/items/" + i0+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
else {
const err18 = {instancePath:instancePath+"/items/" + i0+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
if(data3.item !== undefined){
let data5 = data3.item;
if(typeof data5 === "string"){
if(func2(data5) > 40){
const err19 = {instancePath:instancePath+"/items/" + i0+"/item",schemaPath:"#/properties/items/items/properties/item/maxLength",keyword:"maxLength",params:{limit: 40},message:"must NOT have more than 40 characters",schema:40,parentSchema:schema338.properties.items.items.properties.item,data:data5};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
if(func2(data5) < 1){
const err20 = {instancePath:instancePath+"/items/" + i0+"/item",schemaPath:"#/properties/items/items/properties/item/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema338.properties.items.items.properties.item,data:data5};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
else {
const err21 = {instancePath:instancePath+"/items/" + i0+"/item",schemaPath:"#/properties/items/items/properties/item/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema338.properties.items.items.properties.item.type,parentSchema:schema338.properties.items.items.properties.item,data:data5};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
if(data3.section !== undefined){
let data6 = data3.section;
if(typeof data6 === "string"){
if(func2(data6) > 120){
const err22 = {instancePath:instancePath+"/items/" + i0+"/section",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data6};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
if(func2(data6) < 1){
const err23 = {instancePath:instancePath+"/items/" + i0+"/section",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data6};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
else {
const err24 = {instancePath:instancePath+"/items/" + i0+"/section",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data6};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
if(data3.text !== undefined){
let data7 = data3.text;
if(typeof data7 === "string"){
if(func2(data7) > 2000){
const err25 = {instancePath:instancePath+"/items/" + i0+"/text",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data7};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
if(func2(data7) < 1){
const err26 = {instancePath:instancePath+"/items/" + i0+"/text",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data7};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
else {
const err27 = {instancePath:instancePath+"/items/" + i0+"/text",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data7};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
}
if(data3.clause !== undefined){
let data8 = data3.clause;
if(typeof data8 === "string"){
if(func2(data8) > 80){
const err28 = {instancePath:instancePath+"/items/" + i0+"/clause",schemaPath:"#/properties/items/items/properties/clause/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema338.properties.items.items.properties.clause,data:data8};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
if(func2(data8) < 1){
const err29 = {instancePath:instancePath+"/items/" + i0+"/clause",schemaPath:"#/properties/items/items/properties/clause/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema338.properties.items.items.properties.clause,data:data8};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
}
else {
const err30 = {instancePath:instancePath+"/items/" + i0+"/clause",schemaPath:"#/properties/items/items/properties/clause/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema338.properties.items.items.properties.clause.type,parentSchema:schema338.properties.items.items.properties.clause,data:data8};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
}
if(data3.evidence !== undefined){
let data9 = data3.evidence;
if(!((((data9 === "read") || (data9 === "recalled")) || (data9 === "computed")) || (data9 === "decided"))){
const err31 = {instancePath:instancePath+"/items/" + i0+"/evidence",schemaPath:"defs.json#/$defs/evidence/enum",keyword:"enum",params:{allowedValues: schema98.enum},message:"must be equal to one of the allowed values",schema:schema98.enum,parentSchema:schema98,data:data9};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
}
if(data3.reprocessing !== undefined){
let data10 = data3.reprocessing;
if(typeof data10 !== "boolean"){
const err32 = {instancePath:instancePath+"/items/" + i0+"/reprocessing",schemaPath:"#/properties/items/items/properties/reprocessing/type",keyword:"type",params:{type: "boolean"},message:"must be boolean",schema:schema338.properties.items.items.properties.reprocessing.type,parentSchema:schema338.properties.items.items.properties.reprocessing,data:data10};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
}
if(data3["answered-by"] !== undefined){
let data11 = data3["answered-by"];
if(Array.isArray(data11)){
if(data11.length < 1){
const err33 = {instancePath:instancePath+"/items/" + i0+"/answered-by",schemaPath:"#/properties/items/items/properties/answered-by/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema338.properties.items.items.properties["answered-by"],data:data11};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
const len1 = data11.length;
for(let i1=0; i1<len1; i1++){
let data12 = data11[i1];
if(typeof data12 === "string"){
if(func2(data12) > 120){
const err34 = {instancePath:instancePath+"/items/" + i0+"/answered-by/" + i1,schemaPath:"#/properties/items/items/properties/answered-by/items/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema338.properties.items.items.properties["answered-by"].items,data:data12};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
if(!pattern169.test(data12)){
const err35 = {instancePath:instancePath+"/items/" + i0+"/answered-by/" + i1,schemaPath:"#/properties/items/items/properties/answered-by/items/pattern",keyword:"pattern",params:{pattern: "^[a-z]+:[a-z0-9.-]+(?:/[a-z0-9.-]+)?$"},message:"must match pattern \""+"^[a-z]+:[a-z0-9.-]+(?:/[a-z0-9.-]+)?$"+"\"",schema:"^[a-z]+:[a-z0-9.-]+(?:/[a-z0-9.-]+)?$",parentSchema:schema338.properties.items.items.properties["answered-by"].items,data:data12};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
}
else {
const err36 = {instancePath:instancePath+"/items/" + i0+"/answered-by/" + i1,schemaPath:"#/properties/items/items/properties/answered-by/items/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema338.properties.items.items.properties["answered-by"].items.type,parentSchema:schema338.properties.items.items.properties["answered-by"].items,data:data12};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
}
}
let i2 = data11.length;
let j0;
if(i2 > 1){
const indices0 = {};
for(;i2--;){
let item0 = data11[i2];
if(typeof item0 !== "string"){
continue;
}
if(typeof indices0[item0] == "number"){
j0 = indices0[item0];
const err37 = {instancePath:instancePath+"/items/" + i0+"/answered-by",schemaPath:"#/properties/items/items/properties/answered-by/uniqueItems",keyword:"uniqueItems",params:{i: i2, j: j0},message:"must NOT have duplicate items (items ## "+j0+" and "+i2+" are identical)",schema:true,parentSchema:schema338.properties.items.items.properties["answered-by"],data:data11};
if(vErrors === null){
vErrors = [err37];
}
else {
vErrors.push(err37);
}
errors++;
break;
}
indices0[item0] = i2;
}
}
}
else {
const err38 = {instancePath:instancePath+"/items/" + i0+"/answered-by",schemaPath:"#/properties/items/items/properties/answered-by/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema338.properties.items.items.properties["answered-by"].type,parentSchema:schema338.properties.items.items.properties["answered-by"],data:data11};
if(vErrors === null){
vErrors = [err38];
}
else {
vErrors.push(err38);
}
errors++;
}
}
}
else {
const err39 = {instancePath:instancePath+"/items/" + i0,schemaPath:"#/properties/items/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema338.properties.items.items.type,parentSchema:schema338.properties.items.items,data:data3};
if(vErrors === null){
vErrors = [err39];
}
else {
vErrors.push(err39);
}
errors++;
}
}
}
else {
const err40 = {instancePath:instancePath+"/items",schemaPath:"#/properties/items/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema338.properties.items.type,parentSchema:schema338.properties.items,data:data2};
if(vErrors === null){
vErrors = [err40];
}
else {
vErrors.push(err40);
}
errors++;
}
}
}
else {
const err41 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema338.type,parentSchema:schema338,data};
if(vErrors === null){
vErrors = [err41];
}
else {
vErrors.push(err41);
}
errors++;
}
validate164.errors = vErrors;
return errors === 0;
}
validate164.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_sources = validate165;
const schema344 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"sources.json","title":"Sources","description":"The bibliography.","type":"object","additionalProperties":false,"required":["kind","sources"],"properties":{"kind":{"const":"sources","description":"The kind of document; it picks this schema."},"sources":{"type":"object","additionalProperties":{"type":"object","additionalProperties":false,"required":["title","type"],"properties":{"title":{"type":"string","minLength":1,"description":"Title as published."},"publisher":{"type":"string","minLength":1,"description":"Who published it."},"year":{"type":"integer","minimum":1900,"maximum":2100},"edition":{"type":"string","minLength":1,"description":"Edition or revision."},"url":{"type":"string","pattern":"^https://","description":"Where to find it."},"type":{"enum":["standard","guideline","regulation","paper","handbook","maker","common-practice","clinic"],"description":"What kind of source it is."},"withdrawn":{"$ref":"defs.json#/$defs/date","description":"Last day on which this edition was in force."},"checked":{"$ref":"defs.json#/$defs/date","description":"When somebody last looked at a public copy of it."},"note":{"$ref":"defs.json#/$defs/text","description":"What a reader should know about it."}}},"propertyNames":{"$ref":"defs.json#/$defs/id"},"minProperties":1}}};
const pattern171 = new RegExp("^https://", "u");

function validate165(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="sources.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate165.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema344.required,parentSchema:schema344,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.sources === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "sources"},message:"must have required property '"+"sources"+"'",schema:schema344.required,parentSchema:schema344,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!((key0 === "kind") || (key0 === "sources"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema344,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("sources" !== data0){
const err3 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "sources"},message:"must be equal to constant",schema:"sources",parentSchema:schema344.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.sources !== undefined){
let data1 = data.sources;
if(data1 && typeof data1 == "object" && !Array.isArray(data1)){
if(Object.keys(data1).length < 1){
const err4 = {instancePath:instancePath+"/sources",schemaPath:"#/properties/sources/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema344.properties.sources,data:data1};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
for(const key1 in data1){
const _errs5 = errors;
if(typeof key1 === "string"){
if(func2(key1) > 80){
const err5 = {instancePath:instancePath+"/sources",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(!pattern4.test(key1)){
const err6 = {instancePath:instancePath+"/sources",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/sources",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
var valid1 = _errs5 === errors;
if(!valid1){
const err8 = {instancePath:instancePath+"/sources",schemaPath:"#/properties/sources/propertyNames",keyword:"propertyNames",params:{propertyName: key1},message:"property name must be valid",schema:schema344.properties.sources.propertyNames,parentSchema:schema344.properties.sources,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
for(const key2 in data1){
let data2 = data1[key2];
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.title === undefined){
const err9 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/sources/additionalProperties/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema344.properties.sources.additionalProperties.required,parentSchema:schema344.properties.sources.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(data2.type === undefined){
const err10 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/sources/additionalProperties/required",keyword:"required",params:{missingProperty: "type"},message:"must have required property '"+"type"+"'",schema:schema344.properties.sources.additionalProperties.required,parentSchema:schema344.properties.sources.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
for(const key3 in data2){
if(!(func1.call(schema344.properties.sources.additionalProperties.properties, key3))){
const err11 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/sources/additionalProperties/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key3},message:"must NOT have additional properties",schema:false,parentSchema:schema344.properties.sources.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data2.title !== undefined){
let data3 = data2.title;
if(typeof data3 === "string"){
if(func2(data3) < 1){
const err12 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"#/properties/sources/additionalProperties/properties/title/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema344.properties.sources.additionalProperties.properties.title,data:data3};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
else {
const err13 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"#/properties/sources/additionalProperties/properties/title/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema344.properties.sources.additionalProperties.properties.title.type,parentSchema:schema344.properties.sources.additionalProperties.properties.title,data:data3};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
if(data2.publisher !== undefined){
let data4 = data2.publisher;
if(typeof data4 === "string"){
if(func2(data4) < 1){
const err14 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/publisher",schemaPath:"#/properties/sources/additionalProperties/properties/publisher/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema344.properties.sources.additionalProperties.properties.publisher,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
else {
const err15 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/publisher",schemaPath:"#/properties/sources/additionalProperties/properties/publisher/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema344.properties.sources.additionalProperties.properties.publisher.type,parentSchema:schema344.properties.sources.additionalProperties.properties.publisher,data:data4};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
}
if(data2.year !== undefined){
let data5 = data2.year;
if(!(((typeof data5 == "number") && (!(data5 % 1) && !isNaN(data5))) && (isFinite(data5)))){
const err16 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/year",schemaPath:"#/properties/sources/additionalProperties/properties/year/type",keyword:"type",params:{type: "integer"},message:"must be integer",schema:schema344.properties.sources.additionalProperties.properties.year.type,parentSchema:schema344.properties.sources.additionalProperties.properties.year,data:data5};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
if((typeof data5 == "number") && (isFinite(data5))){
if(data5 > 2100 || isNaN(data5)){
const err17 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/year",schemaPath:"#/properties/sources/additionalProperties/properties/year/maximum",keyword:"maximum",params:{comparison: "<=", limit: 2100},message:"must be <= 2100",schema:2100,parentSchema:schema344.properties.sources.additionalProperties.properties.year,data:data5};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
if(data5 < 1900 || isNaN(data5)){
const err18 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/year",schemaPath:"#/properties/sources/additionalProperties/properties/year/minimum",keyword:"minimum",params:{comparison: ">=", limit: 1900},message:"must be >= 1900",schema:1900,parentSchema:schema344.properties.sources.additionalProperties.properties.year,data:data5};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
}
if(data2.edition !== undefined){
let data6 = data2.edition;
if(typeof data6 === "string"){
if(func2(data6) < 1){
const err19 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/edition",schemaPath:"#/properties/sources/additionalProperties/properties/edition/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema344.properties.sources.additionalProperties.properties.edition,data:data6};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
else {
const err20 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/edition",schemaPath:"#/properties/sources/additionalProperties/properties/edition/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema344.properties.sources.additionalProperties.properties.edition.type,parentSchema:schema344.properties.sources.additionalProperties.properties.edition,data:data6};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
if(data2.url !== undefined){
let data7 = data2.url;
if(typeof data7 === "string"){
if(!pattern171.test(data7)){
const err21 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/url",schemaPath:"#/properties/sources/additionalProperties/properties/url/pattern",keyword:"pattern",params:{pattern: "^https://"},message:"must match pattern \""+"^https://"+"\"",schema:"^https://",parentSchema:schema344.properties.sources.additionalProperties.properties.url,data:data7};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
else {
const err22 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/url",schemaPath:"#/properties/sources/additionalProperties/properties/url/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema344.properties.sources.additionalProperties.properties.url.type,parentSchema:schema344.properties.sources.additionalProperties.properties.url,data:data7};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
if(data2.type !== undefined){
let data8 = data2.type;
if(!((((((((data8 === "standard") || (data8 === "guideline")) || (data8 === "regulation")) || (data8 === "paper")) || (data8 === "handbook")) || (data8 === "maker")) || (data8 === "common-practice")) || (data8 === "clinic"))){
const err23 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/type",schemaPath:"#/properties/sources/additionalProperties/properties/type/enum",keyword:"enum",params:{allowedValues: schema344.properties.sources.additionalProperties.properties.type.enum},message:"must be equal to one of the allowed values",schema:schema344.properties.sources.additionalProperties.properties.type.enum,parentSchema:schema344.properties.sources.additionalProperties.properties.type,data:data8};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
if(data2.withdrawn !== undefined){
let data9 = data2.withdrawn;
if(typeof data9 === "string"){
if(!pattern18.test(data9)){
const err24 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/withdrawn",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data9};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
else {
const err25 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/withdrawn",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data9};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
}
if(data2.checked !== undefined){
let data10 = data2.checked;
if(typeof data10 === "string"){
if(!pattern18.test(data10)){
const err26 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/checked",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data10};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
else {
const err27 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/checked",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data10};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
}
if(data2.note !== undefined){
let data11 = data2.note;
if(typeof data11 === "string"){
if(func2(data11) > 2000){
const err28 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data11};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
if(func2(data11) < 1){
const err29 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data11};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
}
else {
const err30 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data11};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
}
}
else {
const err31 = {instancePath:instancePath+"/sources/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/sources/additionalProperties/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema344.properties.sources.additionalProperties.type,parentSchema:schema344.properties.sources.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
}
}
else {
const err32 = {instancePath:instancePath+"/sources",schemaPath:"#/properties/sources/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema344.properties.sources.type,parentSchema:schema344.properties.sources,data:data1};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
}
}
else {
const err33 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema344.type,parentSchema:schema344,data};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
validate165.errors = vErrors;
return errors === 0;
}
validate165.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_tasks = validate166;
const schema349 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"tasks.json","title":"Tasks","description":"Checks, tests and services that come round.","type":"object","additionalProperties":false,"required":["kind","tasks"],"properties":{"kind":{"const":"tasks","description":"The kind of document; it picks this schema."},"tasks":{"type":"object","additionalProperties":{"type":"object","additionalProperties":false,"required":["title","role","steps","pass","source"],"properties":{"title":{"$ref":"defs.json#/$defs/label","description":"Verb first."},"machine":{"$ref":"defs.json#/$defs/id","description":"Machine kind it is for (a term of the domain machine-kind); without it the task is the clinic's."},"only-when":{"$ref":"defs.json#/$defs/condition","description":"Holds only for machines or clinics where this is true."},"every":{"$ref":"defs.json#/$defs/interval"},"on":{"type":"array","items":{"$ref":"defs.json#/$defs/text"},"minItems":1,"description":"Events that call for it, besides the interval: after repair, on delivery."},"when":{"$ref":"defs.json#/$defs/text","description":"When in the day or cycle."},"role":{"$ref":"defs.json#/$defs/id","description":"Who does it: a term of the domain role."},"wear":{"type":"array","items":{"$ref":"defs.json#/$defs/id"},"minItems":1,"uniqueItems":true,"description":"Protective equipment: terms of the domain ppe."},"steps":{"type":"array","items":{"$ref":"defs.json#/$defs/text"},"minItems":1,"description":"What to do, verb first."},"pass":{"$ref":"defs.json#/$defs/text","description":"How one knows it is done or passed."},"if-not":{"$ref":"defs.json#/$defs/text","description":"What to do when it does not pass."},"record":{"$ref":"defs.json#/$defs/id","description":"Id of the form it is written on."},"caution":{"$ref":"defs.json#/$defs/text","description":"What can hurt someone."},"source":{"$ref":"defs.json#/$defs/source","description":"Where this is from."}}},"propertyNames":{"$ref":"defs.json#/$defs/id"},"minProperties":1}}};

function validate167(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate167.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(Object.keys(data).length < 1){
const err0 = {instancePath,schemaPath:"#/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
for(const key0 in data){
if(!(((key0 === "all") || (key0 === "any")) || (key0 === "not"))){
if(!(validate23(data[key0], {instancePath:instancePath+"/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"),parentData:data,parentDataProperty:key0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate23.errors : vErrors.concat(validate23.errors);
errors = vErrors.length;
}
}
}
if(data.all !== undefined){
let data1 = data.all;
if(Array.isArray(data1)){
if(data1.length < 1){
const err1 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
const len0 = data1.length;
for(let i0=0; i0<len0; i0++){
if(!(validate22(data1[i0], {instancePath:instancePath+"/all/" + i0,parentData:data1,parentDataProperty:i0,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err2 = {instancePath:instancePath+"/all",schemaPath:"#/properties/all/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.all.type,parentSchema:schema37.properties.all,data:data1};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.any !== undefined){
let data3 = data.any;
if(Array.isArray(data3)){
if(data3.length < 1){
const err3 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
const len1 = data3.length;
for(let i1=0; i1<len1; i1++){
if(!(validate22(data3[i1], {instancePath:instancePath+"/any/" + i1,parentData:data3,parentDataProperty:i1,rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err4 = {instancePath:instancePath+"/any",schemaPath:"#/properties/any/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema37.properties.any.type,parentSchema:schema37.properties.any,data:data3};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.not !== undefined){
if(!(validate22(data.not, {instancePath:instancePath+"/not",parentData:data,parentDataProperty:"not",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
errors = vErrors.length;
}
}
}
else {
const err5 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema37.type,parentSchema:schema37,data};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
validate167.errors = vErrors;
return errors === 0;
}
validate167.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate173(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate173.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if((typeof data !== "string") && (!(data && typeof data == "object" && !Array.isArray(data)))){
const err0 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: schema96.type},message:"must be string,object",schema:schema96.type,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(typeof data === "string"){
if(!pattern40.test(data)){
const err1 = {instancePath,schemaPath:"#/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*$",parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema96.required,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
for(const key0 in data){
if(!(((((key0 === "id") || (key0 === "at")) || (key0 === "evidence")) || (key0 === "checked")) || (key0 === "note"))){
const err3 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err4 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(!pattern4.test(data0)){
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
else {
const err6 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
if(data.at !== undefined){
let data1 = data.at;
if(typeof data1 === "string"){
if(func2(data1) < 1){
const err7 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
else {
const err8 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema96.properties.at.type,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.evidence !== undefined){
let data2 = data.evidence;
if(!((((data2 === "read") || (data2 === "recalled")) || (data2 === "computed")) || (data2 === "decided"))){
const err9 = {instancePath:instancePath+"/evidence",schemaPath:"defs.json#/$defs/evidence/enum",keyword:"enum",params:{allowedValues: schema98.enum},message:"must be equal to one of the allowed values",schema:schema98.enum,parentSchema:schema98,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
if(data.checked !== undefined){
let data3 = data.checked;
if(typeof data3 === "string"){
if(!pattern18.test(data3)){
const err10 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
else {
const err11 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.note !== undefined){
let data4 = data.note;
if(typeof data4 === "string"){
if(func2(data4) > 2000){
const err12 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data4) < 1){
const err13 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
}
validate173.errors = vErrors;
return errors === 0;
}
validate173.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate166(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="tasks.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate166.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema349.required,parentSchema:schema349,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.tasks === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "tasks"},message:"must have required property '"+"tasks"+"'",schema:schema349.required,parentSchema:schema349,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!((key0 === "kind") || (key0 === "tasks"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema349,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("tasks" !== data0){
const err3 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "tasks"},message:"must be equal to constant",schema:"tasks",parentSchema:schema349.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.tasks !== undefined){
let data1 = data.tasks;
if(data1 && typeof data1 == "object" && !Array.isArray(data1)){
if(Object.keys(data1).length < 1){
const err4 = {instancePath:instancePath+"/tasks",schemaPath:"#/properties/tasks/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema349.properties.tasks,data:data1};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
for(const key1 in data1){
const _errs5 = errors;
if(typeof key1 === "string"){
if(func2(key1) > 80){
const err5 = {instancePath:instancePath+"/tasks",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(!pattern4.test(key1)){
const err6 = {instancePath:instancePath+"/tasks",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/tasks",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
var valid1 = _errs5 === errors;
if(!valid1){
const err8 = {instancePath:instancePath+"/tasks",schemaPath:"#/properties/tasks/propertyNames",keyword:"propertyNames",params:{propertyName: key1},message:"property name must be valid",schema:schema349.properties.tasks.propertyNames,parentSchema:schema349.properties.tasks,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
for(const key2 in data1){
let data2 = data1[key2];
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.title === undefined){
const err9 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/tasks/additionalProperties/required",keyword:"required",params:{missingProperty: "title"},message:"must have required property '"+"title"+"'",schema:schema349.properties.tasks.additionalProperties.required,parentSchema:schema349.properties.tasks.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(data2.role === undefined){
const err10 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/tasks/additionalProperties/required",keyword:"required",params:{missingProperty: "role"},message:"must have required property '"+"role"+"'",schema:schema349.properties.tasks.additionalProperties.required,parentSchema:schema349.properties.tasks.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
if(data2.steps === undefined){
const err11 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/tasks/additionalProperties/required",keyword:"required",params:{missingProperty: "steps"},message:"must have required property '"+"steps"+"'",schema:schema349.properties.tasks.additionalProperties.required,parentSchema:schema349.properties.tasks.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
if(data2.pass === undefined){
const err12 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/tasks/additionalProperties/required",keyword:"required",params:{missingProperty: "pass"},message:"must have required property '"+"pass"+"'",schema:schema349.properties.tasks.additionalProperties.required,parentSchema:schema349.properties.tasks.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(data2.source === undefined){
const err13 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/tasks/additionalProperties/required",keyword:"required",params:{missingProperty: "source"},message:"must have required property '"+"source"+"'",schema:schema349.properties.tasks.additionalProperties.required,parentSchema:schema349.properties.tasks.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
for(const key3 in data2){
if(!(func1.call(schema349.properties.tasks.additionalProperties.properties, key3))){
const err14 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/tasks/additionalProperties/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key3},message:"must NOT have additional properties",schema:false,parentSchema:schema349.properties.tasks.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
if(data2.title !== undefined){
let data3 = data2.title;
if(typeof data3 === "string"){
if(func2(data3) > 120){
const err15 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(func2(data3) < 1){
const err16 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
else {
const err17 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/title",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
if(data2.machine !== undefined){
let data4 = data2.machine;
if(typeof data4 === "string"){
if(func2(data4) > 80){
const err18 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/machine",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
if(!pattern4.test(data4)){
const err19 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/machine",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
else {
const err20 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/machine",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data4};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
if(data2["only-when"] !== undefined){
if(!(validate167(data2["only-when"], {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/only-when",parentData:data2,parentDataProperty:"only-when",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate167.errors : vErrors.concat(validate167.errors);
errors = vErrors.length;
}
}
if(data2.every !== undefined){
let data6 = data2.every;
if(typeof data6 === "string"){
if(func2(data6) > 60){
const err21 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/every",schemaPath:"defs.json#/$defs/interval/maxLength",keyword:"maxLength",params:{limit: 60},message:"must NOT have more than 60 characters",schema:60,parentSchema:schema113,data:data6};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
if(func2(data6) < 1){
const err22 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/every",schemaPath:"defs.json#/$defs/interval/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema113,data:data6};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
else {
const err23 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/every",schemaPath:"defs.json#/$defs/interval/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema113.type,parentSchema:schema113,data:data6};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
if(data2.on !== undefined){
let data7 = data2.on;
if(Array.isArray(data7)){
if(data7.length < 1){
const err24 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/on",schemaPath:"#/properties/tasks/additionalProperties/properties/on/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema349.properties.tasks.additionalProperties.properties.on,data:data7};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
const len0 = data7.length;
for(let i0=0; i0<len0; i0++){
let data8 = data7[i0];
if(typeof data8 === "string"){
if(func2(data8) > 2000){
const err25 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/on/" + i0,schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data8};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
if(func2(data8) < 1){
const err26 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/on/" + i0,schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data8};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
else {
const err27 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/on/" + i0,schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data8};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
}
}
else {
const err28 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/on",schemaPath:"#/properties/tasks/additionalProperties/properties/on/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema349.properties.tasks.additionalProperties.properties.on.type,parentSchema:schema349.properties.tasks.additionalProperties.properties.on,data:data7};
if(vErrors === null){
vErrors = [err28];
}
else {
vErrors.push(err28);
}
errors++;
}
}
if(data2.when !== undefined){
let data9 = data2.when;
if(typeof data9 === "string"){
if(func2(data9) > 2000){
const err29 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/when",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data9};
if(vErrors === null){
vErrors = [err29];
}
else {
vErrors.push(err29);
}
errors++;
}
if(func2(data9) < 1){
const err30 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/when",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data9};
if(vErrors === null){
vErrors = [err30];
}
else {
vErrors.push(err30);
}
errors++;
}
}
else {
const err31 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/when",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data9};
if(vErrors === null){
vErrors = [err31];
}
else {
vErrors.push(err31);
}
errors++;
}
}
if(data2.role !== undefined){
let data10 = data2.role;
if(typeof data10 === "string"){
if(func2(data10) > 80){
const err32 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/role",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data10};
if(vErrors === null){
vErrors = [err32];
}
else {
vErrors.push(err32);
}
errors++;
}
if(!pattern4.test(data10)){
const err33 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/role",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data10};
if(vErrors === null){
vErrors = [err33];
}
else {
vErrors.push(err33);
}
errors++;
}
}
else {
const err34 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/role",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data10};
if(vErrors === null){
vErrors = [err34];
}
else {
vErrors.push(err34);
}
errors++;
}
}
if(data2.wear !== undefined){
let data11 = data2.wear;
if(Array.isArray(data11)){
if(data11.length < 1){
const err35 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/wear",schemaPath:"#/properties/tasks/additionalProperties/properties/wear/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema349.properties.tasks.additionalProperties.properties.wear,data:data11};
if(vErrors === null){
vErrors = [err35];
}
else {
vErrors.push(err35);
}
errors++;
}
const len1 = data11.length;
for(let i1=0; i1<len1; i1++){
let data12 = data11[i1];
if(typeof data12 === "string"){
if(func2(data12) > 80){
const err36 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/wear/" + i1,schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data12};
if(vErrors === null){
vErrors = [err36];
}
else {
vErrors.push(err36);
}
errors++;
}
if(!pattern4.test(data12)){
const err37 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/wear/" + i1,schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data12};
if(vErrors === null){
vErrors = [err37];
}
else {
vErrors.push(err37);
}
errors++;
}
}
else {
const err38 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/wear/" + i1,schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data12};
if(vErrors === null){
vErrors = [err38];
}
else {
vErrors.push(err38);
}
errors++;
}
}
let i2 = data11.length;
let j0;
if(i2 > 1){
outer0:
for(;i2--;){
for(j0 = i2; j0--;){
if(func0(data11[i2], data11[j0])){
const err39 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/wear",schemaPath:"#/properties/tasks/additionalProperties/properties/wear/uniqueItems",keyword:"uniqueItems",params:{i: i2, j: j0},message:"must NOT have duplicate items (items ## "+j0+" and "+i2+" are identical)",schema:true,parentSchema:schema349.properties.tasks.additionalProperties.properties.wear,data:data11};
if(vErrors === null){
vErrors = [err39];
}
else {
vErrors.push(err39);
}
errors++;
break outer0;
}
}
}
}
}
else {
const err40 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/wear",schemaPath:"#/properties/tasks/additionalProperties/properties/wear/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema349.properties.tasks.additionalProperties.properties.wear.type,parentSchema:schema349.properties.tasks.additionalProperties.properties.wear,data:data11};
if(vErrors === null){
vErrors = [err40];
}
else {
vErrors.push(err40);
}
errors++;
}
}
if(data2.steps !== undefined){
let data13 = data2.steps;
if(Array.isArray(data13)){
if(data13.length < 1){
const err41 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/steps",schemaPath:"#/properties/tasks/additionalProperties/properties/steps/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema349.properties.tasks.additionalProperties.properties.steps,data:data13};
if(vErrors === null){
vErrors = [err41];
}
else {
vErrors.push(err41);
}
errors++;
}
const len2 = data13.length;
for(let i3=0; i3<len2; i3++){
let data14 = data13[i3];
if(typeof data14 === "string"){
if(func2(data14) > 2000){
const err42 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/steps/" + i3,schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data14};
if(vErrors === null){
vErrors = [err42];
}
else {
vErrors.push(err42);
}
errors++;
}
if(func2(data14) < 1){
const err43 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/steps/" + i3,schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data14};
if(vErrors === null){
vErrors = [err43];
}
else {
vErrors.push(err43);
}
errors++;
}
}
else {
const err44 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/steps/" + i3,schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data14};
if(vErrors === null){
vErrors = [err44];
}
else {
vErrors.push(err44);
}
errors++;
}
}
}
else {
const err45 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/steps",schemaPath:"#/properties/tasks/additionalProperties/properties/steps/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema349.properties.tasks.additionalProperties.properties.steps.type,parentSchema:schema349.properties.tasks.additionalProperties.properties.steps,data:data13};
if(vErrors === null){
vErrors = [err45];
}
else {
vErrors.push(err45);
}
errors++;
}
}
if(data2.pass !== undefined){
let data15 = data2.pass;
if(typeof data15 === "string"){
if(func2(data15) > 2000){
const err46 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/pass",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data15};
if(vErrors === null){
vErrors = [err46];
}
else {
vErrors.push(err46);
}
errors++;
}
if(func2(data15) < 1){
const err47 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/pass",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data15};
if(vErrors === null){
vErrors = [err47];
}
else {
vErrors.push(err47);
}
errors++;
}
}
else {
const err48 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/pass",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data15};
if(vErrors === null){
vErrors = [err48];
}
else {
vErrors.push(err48);
}
errors++;
}
}
if(data2["if-not"] !== undefined){
let data16 = data2["if-not"];
if(typeof data16 === "string"){
if(func2(data16) > 2000){
const err49 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/if-not",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data16};
if(vErrors === null){
vErrors = [err49];
}
else {
vErrors.push(err49);
}
errors++;
}
if(func2(data16) < 1){
const err50 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/if-not",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data16};
if(vErrors === null){
vErrors = [err50];
}
else {
vErrors.push(err50);
}
errors++;
}
}
else {
const err51 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/if-not",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data16};
if(vErrors === null){
vErrors = [err51];
}
else {
vErrors.push(err51);
}
errors++;
}
}
if(data2.record !== undefined){
let data17 = data2.record;
if(typeof data17 === "string"){
if(func2(data17) > 80){
const err52 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/record",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data17};
if(vErrors === null){
vErrors = [err52];
}
else {
vErrors.push(err52);
}
errors++;
}
if(!pattern4.test(data17)){
const err53 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/record",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data17};
if(vErrors === null){
vErrors = [err53];
}
else {
vErrors.push(err53);
}
errors++;
}
}
else {
const err54 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/record",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data17};
if(vErrors === null){
vErrors = [err54];
}
else {
vErrors.push(err54);
}
errors++;
}
}
if(data2.caution !== undefined){
let data18 = data2.caution;
if(typeof data18 === "string"){
if(func2(data18) > 2000){
const err55 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/caution",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data18};
if(vErrors === null){
vErrors = [err55];
}
else {
vErrors.push(err55);
}
errors++;
}
if(func2(data18) < 1){
const err56 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/caution",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data18};
if(vErrors === null){
vErrors = [err56];
}
else {
vErrors.push(err56);
}
errors++;
}
}
else {
const err57 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/caution",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data18};
if(vErrors === null){
vErrors = [err57];
}
else {
vErrors.push(err57);
}
errors++;
}
}
if(data2.source !== undefined){
if(!(validate173(data2.source, {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/source",parentData:data2,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate173.errors : vErrors.concat(validate173.errors);
errors = vErrors.length;
}
}
}
else {
const err58 = {instancePath:instancePath+"/tasks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/tasks/additionalProperties/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema349.properties.tasks.additionalProperties.type,parentSchema:schema349.properties.tasks.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err58];
}
else {
vErrors.push(err58);
}
errors++;
}
}
}
else {
const err59 = {instancePath:instancePath+"/tasks",schemaPath:"#/properties/tasks/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema349.properties.tasks.type,parentSchema:schema349.properties.tasks,data:data1};
if(vErrors === null){
vErrors = [err59];
}
else {
vErrors.push(err59);
}
errors++;
}
}
}
else {
const err60 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema349.type,parentSchema:schema349,data};
if(vErrors === null){
vErrors = [err60];
}
else {
vErrors.push(err60);
}
errors++;
}
validate166.errors = vErrors;
return errors === 0;
}
validate166.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_terms = validate175;
const schema369 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"terms.json","title":"Terms","description":"Controlled words with definitions. They are the members of enumerations and the glossary.","type":"object","additionalProperties":false,"required":["kind","terms"],"properties":{"kind":{"const":"terms","description":"The kind of document; it picks this schema."},"terms":{"type":"object","additionalProperties":{"type":"object","additionalProperties":false,"required":["label","definition"],"properties":{"label":{"$ref":"defs.json#/$defs/label","description":"The word as printed."},"plural":{"$ref":"defs.json#/$defs/label"},"domain":{"$ref":"defs.json#/$defs/id","description":"The enumeration it is a member of."},"definition":{"$ref":"defs.json#/$defs/text","description":"What it means, in one or two sentences."},"glossary":{"type":"boolean","description":"false keeps a self-explaining word out of the printed glossary."},"source":{"$ref":"defs.json#/$defs/source","description":"Where this is from."}}},"propertyNames":{"$ref":"defs.json#/$defs/id"},"minProperties":1}}};

function validate176(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate176.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if((typeof data !== "string") && (!(data && typeof data == "object" && !Array.isArray(data)))){
const err0 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: schema96.type},message:"must be string,object",schema:schema96.type,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(typeof data === "string"){
if(!pattern40.test(data)){
const err1 = {instancePath,schemaPath:"#/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*$",parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.id === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "id"},message:"must have required property '"+"id"+"'",schema:schema96.required,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
for(const key0 in data){
if(!(((((key0 === "id") || (key0 === "at")) || (key0 === "evidence")) || (key0 === "checked")) || (key0 === "note"))){
const err3 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema96,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.id !== undefined){
let data0 = data.id;
if(typeof data0 === "string"){
if(func2(data0) > 80){
const err4 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
if(!pattern4.test(data0)){
const err5 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
else {
const err6 = {instancePath:instancePath+"/id",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data0};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
if(data.at !== undefined){
let data1 = data.at;
if(typeof data1 === "string"){
if(func2(data1) < 1){
const err7 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
else {
const err8 = {instancePath:instancePath+"/at",schemaPath:"#/properties/at/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema96.properties.at.type,parentSchema:schema96.properties.at,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
if(data.evidence !== undefined){
let data2 = data.evidence;
if(!((((data2 === "read") || (data2 === "recalled")) || (data2 === "computed")) || (data2 === "decided"))){
const err9 = {instancePath:instancePath+"/evidence",schemaPath:"defs.json#/$defs/evidence/enum",keyword:"enum",params:{allowedValues: schema98.enum},message:"must be equal to one of the allowed values",schema:schema98.enum,parentSchema:schema98,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
if(data.checked !== undefined){
let data3 = data.checked;
if(typeof data3 === "string"){
if(!pattern18.test(data3)){
const err10 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/pattern",keyword:"pattern",params:{pattern: "^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"},message:"must match pattern \""+"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$"+"\"",schema:"^\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])$",parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
else {
const err11 = {instancePath:instancePath+"/checked",schemaPath:"defs.json#/$defs/date/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema57.type,parentSchema:schema57,data:data3};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data.note !== undefined){
let data4 = data.note;
if(typeof data4 === "string"){
if(func2(data4) > 2000){
const err12 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data4) < 1){
const err13 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
}
validate176.errors = vErrors;
return errors === 0;
}
validate176.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate175(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="terms.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate175.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema369.required,parentSchema:schema369,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.terms === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "terms"},message:"must have required property '"+"terms"+"'",schema:schema369.required,parentSchema:schema369,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!((key0 === "kind") || (key0 === "terms"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema369,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("terms" !== data0){
const err3 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "terms"},message:"must be equal to constant",schema:"terms",parentSchema:schema369.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.terms !== undefined){
let data1 = data.terms;
if(data1 && typeof data1 == "object" && !Array.isArray(data1)){
if(Object.keys(data1).length < 1){
const err4 = {instancePath:instancePath+"/terms",schemaPath:"#/properties/terms/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema369.properties.terms,data:data1};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
for(const key1 in data1){
const _errs5 = errors;
if(typeof key1 === "string"){
if(func2(key1) > 80){
const err5 = {instancePath:instancePath+"/terms",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(!pattern4.test(key1)){
const err6 = {instancePath:instancePath+"/terms",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/terms",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
var valid1 = _errs5 === errors;
if(!valid1){
const err8 = {instancePath:instancePath+"/terms",schemaPath:"#/properties/terms/propertyNames",keyword:"propertyNames",params:{propertyName: key1},message:"property name must be valid",schema:schema369.properties.terms.propertyNames,parentSchema:schema369.properties.terms,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
for(const key2 in data1){
let data2 = data1[key2];
if(data2 && typeof data2 == "object" && !Array.isArray(data2)){
if(data2.label === undefined){
const err9 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/terms/additionalProperties/required",keyword:"required",params:{missingProperty: "label"},message:"must have required property '"+"label"+"'",schema:schema369.properties.terms.additionalProperties.required,parentSchema:schema369.properties.terms.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
if(data2.definition === undefined){
const err10 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/terms/additionalProperties/required",keyword:"required",params:{missingProperty: "definition"},message:"must have required property '"+"definition"+"'",schema:schema369.properties.terms.additionalProperties.required,parentSchema:schema369.properties.terms.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
for(const key3 in data2){
if(!((((((key3 === "label") || (key3 === "plural")) || (key3 === "domain")) || (key3 === "definition")) || (key3 === "glossary")) || (key3 === "source"))){
const err11 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/terms/additionalProperties/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key3},message:"must NOT have additional properties",schema:false,parentSchema:schema369.properties.terms.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
}
if(data2.label !== undefined){
let data3 = data2.label;
if(typeof data3 === "string"){
if(func2(data3) > 120){
const err12 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/label",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(func2(data3) < 1){
const err13 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/label",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
else {
const err14 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/label",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data3};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
if(data2.plural !== undefined){
let data4 = data2.plural;
if(typeof data4 === "string"){
if(func2(data4) > 120){
const err15 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/plural",schemaPath:"defs.json#/$defs/label/maxLength",keyword:"maxLength",params:{limit: 120},message:"must NOT have more than 120 characters",schema:120,parentSchema:schema34,data:data4};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(func2(data4) < 1){
const err16 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/plural",schemaPath:"defs.json#/$defs/label/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema34,data:data4};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
else {
const err17 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/plural",schemaPath:"defs.json#/$defs/label/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema34.type,parentSchema:schema34,data:data4};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
if(data2.domain !== undefined){
let data5 = data2.domain;
if(typeof data5 === "string"){
if(func2(data5) > 80){
const err18 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/domain",schemaPath:"defs.json#/$defs/id/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema33,data:data5};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
if(!pattern4.test(data5)){
const err19 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/domain",schemaPath:"defs.json#/$defs/id/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)*$",parentSchema:schema33,data:data5};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
else {
const err20 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/domain",schemaPath:"defs.json#/$defs/id/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema33.type,parentSchema:schema33,data:data5};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
}
if(data2.definition !== undefined){
let data6 = data2.definition;
if(typeof data6 === "string"){
if(func2(data6) > 2000){
const err21 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/definition",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
if(func2(data6) < 1){
const err22 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/definition",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
else {
const err23 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/definition",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data6};
if(vErrors === null){
vErrors = [err23];
}
else {
vErrors.push(err23);
}
errors++;
}
}
if(data2.glossary !== undefined){
let data7 = data2.glossary;
if(typeof data7 !== "boolean"){
const err24 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/glossary",schemaPath:"#/properties/terms/additionalProperties/properties/glossary/type",keyword:"type",params:{type: "boolean"},message:"must be boolean",schema:schema369.properties.terms.additionalProperties.properties.glossary.type,parentSchema:schema369.properties.terms.additionalProperties.properties.glossary,data:data7};
if(vErrors === null){
vErrors = [err24];
}
else {
vErrors.push(err24);
}
errors++;
}
}
if(data2.source !== undefined){
if(!(validate176(data2.source, {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1")+"/source",parentData:data2,parentDataProperty:"source",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate176.errors : vErrors.concat(validate176.errors);
errors = vErrors.length;
}
}
}
else {
const err25 = {instancePath:instancePath+"/terms/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/terms/additionalProperties/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema369.properties.terms.additionalProperties.type,parentSchema:schema369.properties.terms.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err25];
}
else {
vErrors.push(err25);
}
errors++;
}
}
}
else {
const err26 = {instancePath:instancePath+"/terms",schemaPath:"#/properties/terms/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema369.properties.terms.type,parentSchema:schema369.properties.terms,data:data1};
if(vErrors === null){
vErrors = [err26];
}
else {
vErrors.push(err26);
}
errors++;
}
}
}
else {
const err27 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema369.type,parentSchema:schema369,data};
if(vErrors === null){
vErrors = [err27];
}
else {
vErrors.push(err27);
}
errors++;
}
validate175.errors = vErrors;
return errors === 0;
}
validate175.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_translation = validate178;
const schema380 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"translation.json","title":"Translation","description":"What texts of a pack or of the templates say in another language.","type":"object","additionalProperties":false,"required":["kind","language","of","texts"],"properties":{"kind":{"const":"translation","description":"The kind of document; it picks this schema."},"language":{"$ref":"defs.json#/$defs/language","description":"The language of `say`; the folder of the document has the same name."},"of":{"type":"string","pattern":"^[a-z0-9]+(?:-[a-z0-9]+)*(?:/[a-z0-9]+(?:-[a-z0-9]+)*)?$","maxLength":80,"description":"Whose texts: a pack, a folder of a pack (`base/cleaning`), `templates`, or a folder of templates (`templates/manual`)."},"texts":{"type":"array","minItems":1,"items":{"type":"object","additionalProperties":false,"required":["of","say"],"properties":{"of":{"$ref":"defs.json#/$defs/words","description":"The text exactly as it is written, with its references; of a word that is counted, all its forms."},"say":{"$ref":"defs.json#/$defs/words","description":"The same in the language. References, placeholders and expressions are kept as they are, in any order."},"note":{"$ref":"defs.json#/$defs/text","description":"For the next translator. It is not printed."}}}}}};
const pattern188 = new RegExp("^[a-z0-9]+(?:-[a-z0-9]+)*(?:/[a-z0-9]+(?:-[a-z0-9]+)*)?$", "u");
const schema382 = {"type":["string","object"],"minLength":1,"maxLength":4000,"additionalProperties":false,"required":["other"],"properties":{"zero":{"$ref":"defs.json#/$defs/text"},"one":{"$ref":"defs.json#/$defs/text"},"two":{"$ref":"defs.json#/$defs/text"},"few":{"$ref":"defs.json#/$defs/text"},"many":{"$ref":"defs.json#/$defs/text"},"other":{"$ref":"defs.json#/$defs/text"}},"description":"A text, or the forms of a word that is counted, by the plural rules of CLDR."};

function validate179(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
let vErrors = null;
let errors = 0;
const evaluated0 = validate179.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if((typeof data !== "string") && (!(data && typeof data == "object" && !Array.isArray(data)))){
const err0 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: schema382.type},message:"must be string,object",schema:schema382.type,parentSchema:schema382,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(typeof data === "string"){
if(func2(data) > 4000){
const err1 = {instancePath,schemaPath:"#/maxLength",keyword:"maxLength",params:{limit: 4000},message:"must NOT have more than 4000 characters",schema:4000,parentSchema:schema382,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(func2(data) < 1){
const err2 = {instancePath,schemaPath:"#/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema382,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.other === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "other"},message:"must have required property '"+"other"+"'",schema:schema382.required,parentSchema:schema382,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
for(const key0 in data){
if(!((((((key0 === "zero") || (key0 === "one")) || (key0 === "two")) || (key0 === "few")) || (key0 === "many")) || (key0 === "other"))){
const err4 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema382,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.zero !== undefined){
let data0 = data.zero;
if(typeof data0 === "string"){
if(func2(data0) > 2000){
const err5 = {instancePath:instancePath+"/zero",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
if(func2(data0) < 1){
const err6 = {instancePath:instancePath+"/zero",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data0};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/zero",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data0};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
if(data.one !== undefined){
let data1 = data.one;
if(typeof data1 === "string"){
if(func2(data1) > 2000){
const err8 = {instancePath:instancePath+"/one",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(func2(data1) < 1){
const err9 = {instancePath:instancePath+"/one",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
else {
const err10 = {instancePath:instancePath+"/one",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data1};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
if(data.two !== undefined){
let data2 = data.two;
if(typeof data2 === "string"){
if(func2(data2) > 2000){
const err11 = {instancePath:instancePath+"/two",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
if(func2(data2) < 1){
const err12 = {instancePath:instancePath+"/two",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
}
else {
const err13 = {instancePath:instancePath+"/two",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data2};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
}
if(data.few !== undefined){
let data3 = data.few;
if(typeof data3 === "string"){
if(func2(data3) > 2000){
const err14 = {instancePath:instancePath+"/few",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data3};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
if(func2(data3) < 1){
const err15 = {instancePath:instancePath+"/few",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data3};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
}
else {
const err16 = {instancePath:instancePath+"/few",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data3};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
if(data.many !== undefined){
let data4 = data.many;
if(typeof data4 === "string"){
if(func2(data4) > 2000){
const err17 = {instancePath:instancePath+"/many",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
if(func2(data4) < 1){
const err18 = {instancePath:instancePath+"/many",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
else {
const err19 = {instancePath:instancePath+"/many",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data4};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
if(data.other !== undefined){
let data5 = data.other;
if(typeof data5 === "string"){
if(func2(data5) > 2000){
const err20 = {instancePath:instancePath+"/other",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
if(func2(data5) < 1){
const err21 = {instancePath:instancePath+"/other",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err21];
}
else {
vErrors.push(err21);
}
errors++;
}
}
else {
const err22 = {instancePath:instancePath+"/other",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data5};
if(vErrors === null){
vErrors = [err22];
}
else {
vErrors.push(err22);
}
errors++;
}
}
}
validate179.errors = vErrors;
return errors === 0;
}
validate179.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};


function validate178(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="translation.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate178.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema380.required,parentSchema:schema380,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.language === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "language"},message:"must have required property '"+"language"+"'",schema:schema380.required,parentSchema:schema380,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
if(data.of === undefined){
const err2 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "of"},message:"must have required property '"+"of"+"'",schema:schema380.required,parentSchema:schema380,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
if(data.texts === undefined){
const err3 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "texts"},message:"must have required property '"+"texts"+"'",schema:schema380.required,parentSchema:schema380,data};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
for(const key0 in data){
if(!((((key0 === "kind") || (key0 === "language")) || (key0 === "of")) || (key0 === "texts"))){
const err4 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema380,data};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("translation" !== data0){
const err5 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "translation"},message:"must be equal to constant",schema:"translation",parentSchema:schema380.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
if(data.language !== undefined){
let data1 = data.language;
if(typeof data1 === "string"){
if(!pattern21.test(data1)){
const err6 = {instancePath:instancePath+"/language",schemaPath:"defs.json#/$defs/language/pattern",keyword:"pattern",params:{pattern: "^[a-z]{2}(?:-[A-Z]{2})?$"},message:"must match pattern \""+"^[a-z]{2}(?:-[A-Z]{2})?$"+"\"",schema:"^[a-z]{2}(?:-[A-Z]{2})?$",parentSchema:schema60,data:data1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
else {
const err7 = {instancePath:instancePath+"/language",schemaPath:"defs.json#/$defs/language/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema60.type,parentSchema:schema60,data:data1};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
if(data.of !== undefined){
let data2 = data.of;
if(typeof data2 === "string"){
if(func2(data2) > 80){
const err8 = {instancePath:instancePath+"/of",schemaPath:"#/properties/of/maxLength",keyword:"maxLength",params:{limit: 80},message:"must NOT have more than 80 characters",schema:80,parentSchema:schema380.properties.of,data:data2};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
if(!pattern188.test(data2)){
const err9 = {instancePath:instancePath+"/of",schemaPath:"#/properties/of/pattern",keyword:"pattern",params:{pattern: "^[a-z0-9]+(?:-[a-z0-9]+)*(?:/[a-z0-9]+(?:-[a-z0-9]+)*)?$"},message:"must match pattern \""+"^[a-z0-9]+(?:-[a-z0-9]+)*(?:/[a-z0-9]+(?:-[a-z0-9]+)*)?$"+"\"",schema:"^[a-z0-9]+(?:-[a-z0-9]+)*(?:/[a-z0-9]+(?:-[a-z0-9]+)*)?$",parentSchema:schema380.properties.of,data:data2};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
else {
const err10 = {instancePath:instancePath+"/of",schemaPath:"#/properties/of/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema380.properties.of.type,parentSchema:schema380.properties.of,data:data2};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
}
if(data.texts !== undefined){
let data3 = data.texts;
if(Array.isArray(data3)){
if(data3.length < 1){
const err11 = {instancePath:instancePath+"/texts",schemaPath:"#/properties/texts/minItems",keyword:"minItems",params:{limit: 1},message:"must NOT have fewer than 1 items",schema:1,parentSchema:schema380.properties.texts,data:data3};
if(vErrors === null){
vErrors = [err11];
}
else {
vErrors.push(err11);
}
errors++;
}
const len0 = data3.length;
for(let i0=0; i0<len0; i0++){
let data4 = data3[i0];
if(data4 && typeof data4 == "object" && !Array.isArray(data4)){
if(data4.of === undefined){
const err12 = {instancePath:instancePath+"/texts/" + i0,schemaPath:"#/properties/texts/items/required",keyword:"required",params:{missingProperty: "of"},message:"must have required property '"+"of"+"'",schema:schema380.properties.texts.items.required,parentSchema:schema380.properties.texts.items,data:data4};
if(vErrors === null){
vErrors = [err12];
}
else {
vErrors.push(err12);
}
errors++;
}
if(data4.say === undefined){
const err13 = {instancePath:instancePath+"/texts/" + i0,schemaPath:"#/properties/texts/items/required",keyword:"required",params:{missingProperty: "say"},message:"must have required property '"+"say"+"'",schema:schema380.properties.texts.items.required,parentSchema:schema380.properties.texts.items,data:data4};
if(vErrors === null){
vErrors = [err13];
}
else {
vErrors.push(err13);
}
errors++;
}
for(const key1 in data4){
if(!(((key1 === "of") || (key1 === "say")) || (key1 === "note"))){
const err14 = {instancePath:instancePath+"/texts/" + i0,schemaPath:"#/properties/texts/items/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key1},message:"must NOT have additional properties",schema:false,parentSchema:schema380.properties.texts.items,data:data4};
if(vErrors === null){
vErrors = [err14];
}
else {
vErrors.push(err14);
}
errors++;
}
}
if(data4.of !== undefined){
if(!(validate179(data4.of, {instancePath:instancePath+"/texts/" + i0+"/of",parentData:data4,parentDataProperty:"of",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate179.errors : vErrors.concat(validate179.errors);
errors = vErrors.length;
}
}
if(data4.say !== undefined){
if(!(validate179(data4.say, {instancePath:instancePath+"/texts/" + i0+"/say",parentData:data4,parentDataProperty:"say",rootData,dynamicAnchors}))){
vErrors = vErrors === null ? validate179.errors : vErrors.concat(validate179.errors);
errors = vErrors.length;
}
}
if(data4.note !== undefined){
let data7 = data4.note;
if(typeof data7 === "string"){
if(func2(data7) > 2000){
const err15 = {instancePath:instancePath+"/texts/" + i0+"/note",schemaPath:"defs.json#/$defs/text/maxLength",keyword:"maxLength",params:{limit: 2000},message:"must NOT have more than 2000 characters",schema:2000,parentSchema:schema41,data:data7};
if(vErrors === null){
vErrors = [err15];
}
else {
vErrors.push(err15);
}
errors++;
}
if(func2(data7) < 1){
const err16 = {instancePath:instancePath+"/texts/" + i0+"/note",schemaPath:"defs.json#/$defs/text/minLength",keyword:"minLength",params:{limit: 1},message:"must NOT have fewer than 1 characters",schema:1,parentSchema:schema41,data:data7};
if(vErrors === null){
vErrors = [err16];
}
else {
vErrors.push(err16);
}
errors++;
}
}
else {
const err17 = {instancePath:instancePath+"/texts/" + i0+"/note",schemaPath:"defs.json#/$defs/text/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema41.type,parentSchema:schema41,data:data7};
if(vErrors === null){
vErrors = [err17];
}
else {
vErrors.push(err17);
}
errors++;
}
}
}
else {
const err18 = {instancePath:instancePath+"/texts/" + i0,schemaPath:"#/properties/texts/items/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema380.properties.texts.items.type,parentSchema:schema380.properties.texts.items,data:data4};
if(vErrors === null){
vErrors = [err18];
}
else {
vErrors.push(err18);
}
errors++;
}
}
}
else {
const err19 = {instancePath:instancePath+"/texts",schemaPath:"#/properties/texts/type",keyword:"type",params:{type: "array"},message:"must be array",schema:schema380.properties.texts.type,parentSchema:schema380.properties.texts,data:data3};
if(vErrors === null){
vErrors = [err19];
}
else {
vErrors.push(err19);
}
errors++;
}
}
}
else {
const err20 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema380.type,parentSchema:schema380,data};
if(vErrors === null){
vErrors = [err20];
}
else {
vErrors.push(err20);
}
errors++;
}
validate178.errors = vErrors;
return errors === 0;
}
validate178.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

const of_wording = validate182;
const schema390 = {"$schema":"https://json-schema.org/draft/2020-12/schema","$id":"wording.json","title":"Wording","description":"How a region spells what the packs below it say.","type":"object","additionalProperties":false,"required":["kind","words"],"properties":{"kind":{"const":"wording","description":"The kind of document; it picks this schema."},"words":{"type":"object","minProperties":1,"propertyNames":{"pattern":"^\\p{Ll}[\\p{Ll}’' -]*$","description":"A word or words in lower case."},"additionalProperties":{"type":"string","pattern":"^\\p{L}[\\p{L}’' -]*$","description":"A word or words."},"description":"Whole words as the packs below write them, in lower case, and as they are written here. Case is kept; ids, titles of sources and a clinic’s own texts are left alone."}}};
const pattern189 = new RegExp("^\\p{Ll}[\\p{Ll}’' -]*$", "u");
const pattern190 = new RegExp("^\\p{L}[\\p{L}’' -]*$", "u");

function validate182(data, {instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors={}}={}){
/*# sourceURL="wording.json" */;
let vErrors = null;
let errors = 0;
const evaluated0 = validate182.evaluated;
if(evaluated0.dynamicProps){
evaluated0.props = undefined;
}
if(evaluated0.dynamicItems){
evaluated0.items = undefined;
}
if(data && typeof data == "object" && !Array.isArray(data)){
if(data.kind === undefined){
const err0 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "kind"},message:"must have required property '"+"kind"+"'",schema:schema390.required,parentSchema:schema390,data};
if(vErrors === null){
vErrors = [err0];
}
else {
vErrors.push(err0);
}
errors++;
}
if(data.words === undefined){
const err1 = {instancePath,schemaPath:"#/required",keyword:"required",params:{missingProperty: "words"},message:"must have required property '"+"words"+"'",schema:schema390.required,parentSchema:schema390,data};
if(vErrors === null){
vErrors = [err1];
}
else {
vErrors.push(err1);
}
errors++;
}
for(const key0 in data){
if(!((key0 === "kind") || (key0 === "words"))){
const err2 = {instancePath,schemaPath:"#/additionalProperties",keyword:"additionalProperties",params:{additionalProperty: key0},message:"must NOT have additional properties",schema:false,parentSchema:schema390,data};
if(vErrors === null){
vErrors = [err2];
}
else {
vErrors.push(err2);
}
errors++;
}
}
if(data.kind !== undefined){
let data0 = data.kind;
if("wording" !== data0){
const err3 = {instancePath:instancePath+"/kind",schemaPath:"#/properties/kind/const",keyword:"const",params:{allowedValue: "wording"},message:"must be equal to constant",schema:"wording",parentSchema:schema390.properties.kind,data:data0};
if(vErrors === null){
vErrors = [err3];
}
else {
vErrors.push(err3);
}
errors++;
}
}
if(data.words !== undefined){
let data1 = data.words;
if(data1 && typeof data1 == "object" && !Array.isArray(data1)){
if(Object.keys(data1).length < 1){
const err4 = {instancePath:instancePath+"/words",schemaPath:"#/properties/words/minProperties",keyword:"minProperties",params:{limit: 1},message:"must NOT have fewer than 1 properties",schema:1,parentSchema:schema390.properties.words,data:data1};
if(vErrors === null){
vErrors = [err4];
}
else {
vErrors.push(err4);
}
errors++;
}
for(const key1 in data1){
const _errs5 = errors;
if(typeof key1 === "string"){
if(!pattern189.test(key1)){
const err5 = {instancePath:instancePath+"/words",schemaPath:"#/properties/words/propertyNames/pattern",keyword:"pattern",params:{pattern: "^\\p{Ll}[\\p{Ll}’' -]*$"},message:"must match pattern \""+"^\\p{Ll}[\\p{Ll}’' -]*$"+"\"",schema:"^\\p{Ll}[\\p{Ll}’' -]*$",parentSchema:schema390.properties.words.propertyNames,data:key1,propertyName:key1};
if(vErrors === null){
vErrors = [err5];
}
else {
vErrors.push(err5);
}
errors++;
}
}
var valid1 = _errs5 === errors;
if(!valid1){
const err6 = {instancePath:instancePath+"/words",schemaPath:"#/properties/words/propertyNames",keyword:"propertyNames",params:{propertyName: key1},message:"property name must be valid",schema:schema390.properties.words.propertyNames,parentSchema:schema390.properties.words,data:data1};
if(vErrors === null){
vErrors = [err6];
}
else {
vErrors.push(err6);
}
errors++;
}
}
for(const key2 in data1){
let data2 = data1[key2];
if(typeof data2 === "string"){
if(!pattern190.test(data2)){
const err7 = {instancePath:instancePath+"/words/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/words/additionalProperties/pattern",keyword:"pattern",params:{pattern: "^\\p{L}[\\p{L}’' -]*$"},message:"must match pattern \""+"^\\p{L}[\\p{L}’' -]*$"+"\"",schema:"^\\p{L}[\\p{L}’' -]*$",parentSchema:schema390.properties.words.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err7];
}
else {
vErrors.push(err7);
}
errors++;
}
}
else {
const err8 = {instancePath:instancePath+"/words/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"),schemaPath:"#/properties/words/additionalProperties/type",keyword:"type",params:{type: "string"},message:"must be string",schema:schema390.properties.words.additionalProperties.type,parentSchema:schema390.properties.words.additionalProperties,data:data2};
if(vErrors === null){
vErrors = [err8];
}
else {
vErrors.push(err8);
}
errors++;
}
}
}
else {
const err9 = {instancePath:instancePath+"/words",schemaPath:"#/properties/words/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema390.properties.words.type,parentSchema:schema390.properties.words,data:data1};
if(vErrors === null){
vErrors = [err9];
}
else {
vErrors.push(err9);
}
errors++;
}
}
}
else {
const err10 = {instancePath,schemaPath:"#/type",keyword:"type",params:{type: "object"},message:"must be object",schema:schema390.type,parentSchema:schema390,data};
if(vErrors === null){
vErrors = [err10];
}
else {
vErrors.push(err10);
}
errors++;
}
validate182.errors = vErrors;
return errors === 0;
}
validate182.evaluated = {"props":true,"dynamicProps":false,"dynamicItems":false};

/** The SHA-256 of the schemas that this was made from. */
export const madeFrom: string = '40263065b1a5fda3ab722041ff0be587728613663f14e868bb0d5e4dbc6c43bf';

export const validators: Readonly<Record<string, ValidateFunction>> = {
  'card': of_card,
  'clinic': of_clinic,
  'decision': of_decision,
  'equipment': of_equipment,
  'facts': of_facts,
  'fixture': of_fixture,
  'form': of_form,
  'instruments': of_instruments,
  'limits': of_limits,
  'overrides': of_overrides,
  'pack': of_pack,
  'phrases': of_phrases,
  'policy': of_policy,
  'procedure': of_procedure,
  'requirements': of_requirements,
  'sources': of_sources,
  'tasks': of_tasks,
  'terms': of_terms,
  'translation': of_translation,
  'wording': of_wording,
};
